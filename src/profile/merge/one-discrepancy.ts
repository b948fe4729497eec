import type { Discrepancy } from '../../fit/constants.ts';

/**
 * What the equations miss, for a profile of two fits: the smaller of the two for all mixtures, so that tubes read with the
 * better instrument are doubted no more for standing beside others; the tubes of the other fit carry the rest themselves.
 * Haze is of films, not of tubes: the greater.
 */
export function oneDiscrepancy(
  a: Discrepancy,
  b: Discrepancy,
): { readonly both: Discrepancy; readonly restOfFirst: Discrepancy; readonly restOfSecond: Discrepancy } {
  const { correlationNm } = a;
  const sdLnKS = a.sdLnKS.map((v, i) => Math.min(v, b.sdLnKS[i]!));
  const rest = (of: Discrepancy): Discrepancy => ({
    correlationNm,
    sdLnKS: of.sdLnKS.map((v, i) => Math.sqrt(Math.max(0, v * v - sdLnKS[i]! ** 2))),
  });
  const sdHaze = Math.max(a.sdHaze ?? 0, b.sdHaze ?? 0);
  return {
    both: { sdLnKS, correlationNm, ...(sdHaze > 0 ? { sdHaze } : {}) },
    restOfFirst: rest(a),
    restOfSecond: rest(b),
  };
}
