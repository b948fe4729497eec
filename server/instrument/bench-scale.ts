import type { CountFrame, CountingHead, Exposure } from '../../src/calibrate/reading/counts.ts';
import { signalOf } from '../../src/calibrate/reading/counts.ts';
import { holdLightTight } from '../../src/calibrate/reading/light-leak.ts';
import { holdWhite, reflectanceFromSignal } from '../../src/calibrate/reading/reflectance.ts';
import { type WarmUp, warmUp } from '../../src/calibrate/reading/warm-up.ts';
import { whiteDue, type WhiteReading } from '../../src/calibrate/reading/white-bracket.ts';

/** What was made of one exposure. */
export interface Calibrated {
  /** Dark-subtracted basic counts per channel. */
  readonly signal: Float64Array;
  /** Reflectance factor per channel; undefined before the white tile was read. */
  readonly reflectance: Float64Array | undefined;
}

/** White, trap and dark of one session at one setting, and what they say about the readings in between. */
export class BenchScale {
  readonly head: CountingHead;
  #white: WhiteReading | undefined;
  #steadying: Float64Array[] = [];
  #tile: ArrayLike<number> = [];
  #trap: { signal: Float64Array; dark: CountFrame } | undefined;
  #readings = 0;
  #settled = false;
  #cold: string | undefined;

  constructor(head: CountingHead) {
    this.head = head;
  }

  /**
   * Takes the white tile as read several times in a row; it is used from here on.
   * @param tile its reflectance factor per channel
   * @returns its signal, the mean of the exposures
   * @throws ReadingRefused when an exposure is no white
   */
  takeWhite(
    exposures: readonly Exposure[],
    tile: ArrayLike<number>,
    atMs: number,
    kelvin?: number,
  ): Float64Array {
    const signals = exposures.map((exposure) => holdWhite(exposure, this.head));
    this.#steadying = [...this.#steadying, ...signals].slice(-10);
    const n = signals.length;
    const signal = signals[0]!.map((_, c) => signals.reduce((sum, s) => sum + s[c]!, 0) / n);
    this.#white = { signal, atMs, ...(kelvin === undefined ? {} : { kelvin }) };
    this.#cold = undefined;
    this.#tile = tile;
    this.#readings = 0;
    return signal;
  }

  /** @throws ReadingRefused when the exposure cannot be used */
  takeTrap(exposure: Exposure): void {
    this.#trap = { signal: signalOf(exposure, this.head), dark: exposure.dark };
  }

  /**
   * Counts to reflectance. Without a trap its signal is taken as zero: the head's own flare stays in the reading, and
   * `missing` says so.
   * @throws ReadingRefused saturated, leaking, or anything else that makes it no reading
   */
  calibrate(exposure: Exposure): Calibrated {
    const signal = signalOf(exposure, this.head);
    const white = this.#white?.signal;
    if (!white) return { signal, reflectance: undefined };
    if (this.#trap) holdLightTight(exposure.dark, this.#trap.dark, white, this.head.channels);
    const trap = this.#trap?.signal ?? new Float64Array(signal.length);
    const reflectance = reflectanceFromSignal(signal, { white, trap, tile: this.#tile }, this.head.channels);
    return { signal, reflectance };
  }

  /** A reading was kept since the last white. */
  countReading(): void {
    this.#readings += 1;
  }

  /** The head was without power for a while: its white counts again once it is read anew. */
  chill(why: string): void {
    if (this.#white !== undefined) this.#cold = why;
    this.#steadying = [];
    this.#settled = false;
  }

  /** Why the white is to be read before anything else, where the head was without power. */
  get isCold(): string | undefined {
    return this.#cold;
  }

  get hasWhite(): boolean {
    return this.#white !== undefined && this.#cold === undefined;
  }

  get hasTrap(): boolean {
    return this.#trap !== undefined;
  }

  get warmUp(): WarmUp {
    const judged = warmUp(this.#steadying, this.#settled);
    if (judged.state === 'settled') this.#settled = true;
    return judged;
  }

  /** Why the white is due again, where it is. */
  whiteDue(nowMs: number, kelvin?: number): string | undefined {
    const white = this.#white;
    if (!white) return undefined;
    if (this.#cold) return this.#cold;
    return whiteDue({
      readingsSinceWhite: this.#readings,
      whiteAgeMs: nowMs - white.atMs,
      ...(kelvin !== undefined && white.kelvin !== undefined ? { kelvinChange: kelvin - white.kelvin } : {}),
    });
  }

  /** What a reading was worked out from, to be kept with it. */
  record(): Record<string, unknown> {
    return {
      white: this.#white ? [...this.#white.signal] : null,
      trap: this.#trap ? [...this.#trap.signal] : null,
      tile: Array.from(this.#tile),
    };
  }
}
