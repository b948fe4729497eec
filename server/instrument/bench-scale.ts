import type { CountFrame, CountingHead, Exposure } from '../../src/calibrate/reading/counts.ts';
import { signalOf } from '../../src/calibrate/reading/counts.ts';
import { holdLightTight, lightLeak } from '../../src/calibrate/reading/light-leak.ts';
import { holdWhite, reflectanceFromSignal } from '../../src/calibrate/reading/reflectance.ts';
import { type WarmUp, warmUp, whitesThatTell } from '../../src/calibrate/reading/warm-up.ts';
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
  #steadying: readonly WhiteReading[] = [];
  #tile: ArrayLike<number> = [];
  #trap: { signal: Float64Array; dark: CountFrame } | undefined;
  #readings = 0;
  #settled = false;
  #cold: string | undefined;
  /** Basic counts at the gain in use over those at `gain`; undefined while they are one and the same. */
  #ratios: Float64Array | undefined;
  /** The gain every signal here is expressed at: the one the session began with. */
  readonly gain: number;

  constructor(head: CountingHead, gain: number) {
    this.head = head;
    this.gain = gain;
  }

  /**
   * From here on exposures come at another gain; white and trap stay.
   * @param ratios basic counts at that gain over those at `gain`, per channel; undefined for `gain` itself
   */
  regain(ratios: Float64Array | undefined): void {
    this.#ratios = ratios;
  }

  /**
   * Takes the white tile as read several times in a row; it is used from here on.
   * @param times of the exposures, ms
   * @param tile its reflectance factor per channel
   * @returns its signal, the mean of the exposures
   * @throws ReadingRefused when an exposure is no white
   */
  takeWhite(
    exposures: readonly Exposure[],
    times: readonly number[],
    tile: ArrayLike<number>,
    kelvin?: number,
  ): Float64Array {
    const signals = exposures.map((exposure) => this.#atFirstGain(holdWhite(exposure, this.head)));
    this.#watch(signals.map((signal, i) => ({ signal, atMs: times[i]! })));
    const atMs = times.at(-1)!;
    const n = signals.length;
    const signal = signals[0]!.map((_, c) => signals.reduce((sum, s) => sum + s[c]!, 0) / n);
    this.#white = { signal, atMs, ...(kelvin === undefined ? {} : { kelvin }) };
    this.#cold = undefined;
    this.#tile = tile;
    this.#readings = 0;
    return signal;
  }

  /** One more look at the white, to see whether the lamp has settled; the white in use stays. */
  watchWhite(exposure: Exposure, atMs: number): void {
    this.#watch([{ signal: this.#atFirstGain(holdWhite(exposure, this.head)), atMs }]);
  }

  /** @throws ReadingRefused when the exposure cannot be used */
  takeTrap(exposure: Exposure): void {
    this.#trap = { signal: this.signal(exposure), dark: exposure.dark };
  }

  /** Dark-subtracted basic counts as they would be at `gain`. @throws ReadingRefused */
  signal(exposure: Exposure): Float64Array {
    return this.#atFirstGain(signalOf(exposure, this.head));
  }

  /** Light with the lamp off beyond that on the trap. @returns undefined before white and trap are read at this gain */
  leak(dark: CountFrame): { readonly share: number; readonly channel: number } | undefined {
    const onTrap = this.#trapDark(dark);
    return this.#white && onTrap ? lightLeak(dark, onTrap, this.#white.signal) : undefined;
  }

  /**
   * Counts to reflectance. Without a trap its signal is taken as zero: the head's own flare stays in the reading, and
   * `missing` says so.
   * @throws ReadingRefused saturated, leaking, or anything else that makes it no reading
   */
  calibrate(exposure: Exposure): Calibrated {
    const signal = this.signal(exposure);
    const white = this.#white?.signal;
    if (!white) return { signal, reflectance: undefined };
    const dark = this.#trapDark(exposure.dark);
    if (dark) holdLightTight(exposure.dark, dark, white, this.head.channels);
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

  /** The dark on the trap, where it was taken at the same gain: part of a dark does not go with the gain. */
  #trapDark({ gain }: CountFrame): CountFrame | undefined {
    const dark = this.#trap?.dark;
    return dark?.gain === gain ? dark : undefined;
  }

  #watch(whites: readonly WhiteReading[]): void {
    this.#steadying = whitesThatTell([...this.#steadying, ...whites]);
  }

  #atFirstGain(signal: Float64Array): Float64Array {
    const ratios = this.#ratios;
    return ratios ? signal.map((s, i) => s / ratios[i]!) : signal;
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
