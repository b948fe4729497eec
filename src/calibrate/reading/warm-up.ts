/**
 * Warm-up judged by what is measured, not by the clock: ten whites in a row whose level drifts by less than 0.1 % in
 * all. The level is the mean over channels of each channel's share of its own mean, so that the noise of single
 * channels averages out; the drift is a fitted line's rise from the first to the last.
 */
import { SETTLING_LIMIT, SETTLING_WHITES } from '../limits.ts';
import { perCent } from '../per-cent.ts';

export type WarmUpState = 'unknown' | 'settling' | 'settled' | 'drifting';

export interface WarmUp {
  readonly state: WarmUpState;
  /** Signed drift over the whites looked at, as a share; `undefined` below three whites. */
  readonly drift: number | undefined;
  readonly sentence: string;
}

/** Rise of a least-squares line through values at 0, 1, 2, ..., from the first to the last. */
export function lineRise(values: readonly number[]): number {
  const n = values.length;
  if (n < 2) return 0;
  const centre = (n - 1) / 2;
  let top = 0;
  let bottom = 0;
  values.forEach((v, i) => {
    top += (i - centre) * v;
    bottom += (i - centre) ** 2;
  });
  return (top / bottom) * (n - 1);
}

/**
 * Judges the last ten of `whites` (signals per channel, oldest first). `wasSettled`: it had settled before in this
 * session, so a drift now is worth a different sentence.
 */
export function warmUp(whites: readonly ArrayLike<number>[], wasSettled = false): WarmUp {
  const last = whites.slice(-SETTLING_WHITES);
  if (last.length < 3) {
    return {
      state: 'unknown',
      drift: undefined,
      sentence: `Leave the head on the white tile: ${SETTLING_WHITES} readings in a row show whether it has settled.`,
    };
  }
  const n = last[0]!.length;
  const means = Array.from({ length: n }, (_, c) => last.reduce((sum, w) => sum + w[c]!, 0) / last.length);
  const levels = last.map((w) => means.reduce((sum, m, c) => sum + w[c]! / m, 0) / n);
  const drift = lineRise(levels);
  const size = perCent(drift);
  const steady = Math.abs(drift) < SETTLING_LIMIT;
  if (steady && last.length === SETTLING_WHITES) {
    return {
      state: 'settled',
      drift,
      sentence: `Settled: the white moved by ${size} over ${SETTLING_WHITES} readings.`,
    };
  }
  if (wasSettled && !steady) {
    return {
      state: 'drifting',
      drift,
      sentence: `The white moves again, by ${size} over ${last.length} readings; wait until it settles, then read the white tile.`,
    };
  }
  const sentence = steady
    ? `Steady so far (${size}); ${SETTLING_WHITES - last.length} more white readings settle it.`
    : `Still settling: the white moved by ${size} over ${last.length} readings, and ${perCent(SETTLING_LIMIT)} is allowed; leave the lamp on.`;
  return { state: 'settling', drift, sentence };
}
