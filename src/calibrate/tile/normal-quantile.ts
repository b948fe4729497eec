import { say } from './sentences.ts';

/**
 * Quantile of the standard normal distribution: M. Abramowitz and I. Stegun, "Handbook of Mathematical Functions",
 * 26.2.23, error below 4.5e-4; enough for control limits.
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(say('probability', { p }));
  const tail = Math.min(p, 1 - p);
  const t = Math.sqrt(-2 * Math.log(tail));
  const x =
    t -
    (2.515517 + 0.802853 * t + 0.010328 * t * t) /
      (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t * t * t);
  return p < 0.5 ? -x : x;
}
