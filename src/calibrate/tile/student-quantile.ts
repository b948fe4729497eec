/**
 * Upper quantile of Student's t for any degrees of freedom above 1. With t = sqrt(nu) tan(phi) its density becomes
 * cos^(nu - 1)(phi) (M. Abramowitz and I. Stegun, "Handbook of Mathematical Functions", 26.7.3 and 26.7.4 are its
 * integrals for whole nu); the tail is integrated from the far end, so that it keeps its digits where it is small.
 */
const STEPS = 200;

/** Integral of sin^(nu - 1) from 0 to `angle`, by Simpson's rule. */
function tail(nu: number, angle: number): number {
  let sum = 0;
  for (let i = 1; i <= STEPS; i++) {
    const weight = i === STEPS ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * Math.sin((angle * i) / STEPS) ** (nu - 1);
  }
  return (sum * angle) / (3 * STEPS);
}

/** @param above probability of a larger value, above 0 and below 0.5. @param nu up to 100 */
export function studentQuantile(above: number, nu: number): number {
  const wanted = above * 2 * tail(nu, Math.PI / 2);
  let [low, high] = [0, Math.PI / 2];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (tail(nu, middle) < wanted) low = middle;
    else high = middle;
  }
  return Math.sqrt(nu) / Math.tan((low + high) / 2);
}
