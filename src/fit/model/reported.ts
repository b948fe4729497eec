/**
 * What an instrument that reports nothing below zero reports on average: E max(0, m + s z) = m Phi(m/s) + s phi(m/s)
 * for a true reading m and noise s (the rectified normal distribution; textbook). Its slope by m is Phi(m/s).
 */
export function reportedMean(m: number, sigma: number): { value: number; slope: number } {
  const z = m / sigma;
  if (z > 8) return { value: m, slope: 1 };
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  const slope = normalDistribution(z);
  return { value: m * slope + sigma * density, slope };
}

/**
 * Phi(z), by W. J. Cody's scheme reduced to one rational (M. Abramowitz, I. A. Stegun, "Handbook of Mathematical
 * Functions", 26.2.17): absolute error under 7.5e-8.
 */
export function normalDistribution(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z >= 0 ? 1 - tail : tail;
}
