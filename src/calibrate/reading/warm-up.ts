/**
 * Warm-up judged by what is measured, not by the clock: whites in a row, ten or more over 20 s or more, whose level
 * drifts by less than 0.1 % in all. The level is the mean over channels of each channel's share of its own mean, so
 * that the noise of single channels averages out; the drift is a fitted line's rise from the first to the last.
 */
import { SETTLING_LIMIT, SETTLING_SPAN_MS, SETTLING_WHITES } from '../limits.ts';
import { perCent } from '../per-cent.ts';
import { say } from './sentences.ts';
import type { WhiteReading } from './white-bracket.ts';

const seconds = (ms: number): string => `${Math.round(ms / 1000)} s`;
const SPAN = seconds(SETTLING_SPAN_MS);

export type WarmUpState = 'unknown' | 'settling' | 'settled' | 'drifting';

export interface WarmUp {
  readonly state: WarmUpState;
  /** Signed drift over the whites looked at, as a share; `undefined` below three whites. */
  readonly drift: number | undefined;
  readonly sentence: string;
}

/** Rise of a least-squares line through values at times, from the first time to the last. */
export function lineRise(values: readonly number[], times: readonly number[]): number {
  const n = values.length;
  const centre = times.reduce((sum, t) => sum + t, 0) / n;
  const bottom = times.reduce((sum, t) => sum + (t - centre) ** 2, 0);
  if (!(bottom > 0)) return 0;
  const top = values.reduce((sum, v, i) => sum + (times[i]! - centre) * v, 0);
  return (top / bottom) * (times.at(-1)! - times[0]!);
}

/** The newest whites that are ten or more and span 20 s or more; all of them where they do not yet. Oldest first. */
export function whitesThatTell<T extends Pick<WhiteReading, 'atMs'>>(whites: readonly T[]): readonly T[] {
  const newest = whites.at(-1);
  if (!newest) return whites;
  const early = whites.filter((w) => newest.atMs - w.atMs >= SETTLING_SPAN_MS).length;
  return whites.slice(Math.max(0, Math.min(early - 1, whites.length - SETTLING_WHITES)));
}

/**
 * Judges the newest of `whites` (signals per channel, oldest first). `wasSettled`: it had settled before in this
 * session, so a drift now is worth a different sentence.
 */
export function warmUp(whites: readonly Pick<WhiteReading, 'signal' | 'atMs'>[], wasSettled = false): WarmUp {
  const last = whitesThatTell(whites);
  if (last.length < 3) {
    return {
      state: 'unknown',
      drift: undefined,
      sentence: say('warm-wait', { count: SETTLING_WHITES, span: SPAN }),
    };
  }
  const n = last[0]!.signal.length;
  const means = Array.from(
    { length: n },
    (_, c) => last.reduce((sum, w) => sum + w.signal[c]!, 0) / last.length,
  );
  const levels = last.map((w) => means.reduce((sum, m, c) => sum + w.signal[c]! / m, 0) / n);
  const times = last.map((w) => w.atMs);
  const drift = lineRise(levels, times);
  const by = perCent(drift);
  const count = last.length;
  const steady = Math.abs(drift) < SETTLING_LIMIT;
  const spanMs = times.at(-1)! - times[0]!;
  const more = Math.max(0, SETTLING_WHITES - last.length);
  if (steady && more === 0 && spanMs >= SETTLING_SPAN_MS) {
    return {
      state: 'settled',
      drift,
      sentence: say('warm-settled', { by, count, span: seconds(spanMs) }),
    };
  }
  if (wasSettled && !steady) {
    return {
      state: 'drifting',
      drift,
      sentence: say('warm-moves', { by, count }),
    };
  }
  const sentence = steady
    ? say('warm-steady', { by, wanted: SETTLING_WHITES, span: SPAN, count, sofar: seconds(spanMs) })
    : say('warm-settling', { by, count, allowed: perCent(SETTLING_LIMIT) });
  return { state: 'settling', drift, sentence };
}
