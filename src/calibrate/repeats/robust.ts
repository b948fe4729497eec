/**
 * Median and median absolute deviation. The factor 1.4826 makes the MAD of a normal sample its standard deviation:
 * P. J. Rousseeuw and C. Croux, "Alternatives to the Median Absolute Deviation", J. Am. Stat. Assoc. 88 (1993) 1273-1283.
 */
import { say } from './sentences.ts';

/** Makes a median absolute deviation the standard deviation of a normal sample. */
export const MAD_TO_SD = 1.4826;

/** @throws RangeError for an empty list */
export function median(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError(say('median-of-none'));
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/** Robust standard deviation: 1.4826 times the median distance from the median. */
export function robustSd(values: readonly number[]): number {
  const m = median(values);
  return MAD_TO_SD * median(values.map((v) => Math.abs(v - m)));
}

/**
 * Makes the MAD of few normal values unbiased: C. Croux and P. J. Rousseeuw, "Time-efficient algorithms for two
 * highly robust estimators of scale", COMPSTAT 1992; factors from memory.
 */
const SMALL_SAMPLE = [1.196, 1.495, 1.363, 1.206, 1.2, 1.14, 1.129, 1.107];

/** Robust standard deviation with the correction for few values; 0 for one. */
export function robustSdOfFew(values: readonly number[]): number {
  const n = values.length;
  if (n < 2) return 0;
  return robustSd(values) * (SMALL_SAMPLE[n - 2] ?? n / (n - 0.8));
}
