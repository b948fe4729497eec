/**
 * What a reading is worth to the fit: the relative error of K/S = (1 - R)^2 / (2R) (P. Kubelka and F. Munk 1931) that
 * a small error of R makes,
 *
 *     sigma(K/S) / (K/S) = sigma_R (1 + R) / (R (1 - R))
 *
 * It is least near R = 0.4 and grows without end towards black and towards white.
 * @param R reflectance, between 0 and 1
 * @param sigmaR standard deviation of R, absolute
 */
export function relativeErrorOfKS(R: number, sigmaR: number): number {
  if (!(R > 0 && R < 1)) return Number.POSITIVE_INFINITY;
  return (sigmaR * (1 + R)) / (R * (1 - R));
}
