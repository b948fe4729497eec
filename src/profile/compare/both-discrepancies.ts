import type { Discrepancy } from '../../fit/constants.ts';

/** What the equations miss in mixes of tubes of two fits: the larger of the two, wavelength by wavelength. */
export function bothDiscrepancies(a: Discrepancy, b: Discrepancy): Discrepancy {
  const sdHaze = Math.max(a.sdHaze ?? 0, b.sdHaze ?? 0);
  return {
    sdLnKS: a.sdLnKS.map((v, i) => Math.max(v, b.sdLnKS[i]!)),
    correlationNm: a.correlationNm,
    ...(sdHaze > 0 ? { sdHaze } : {}),
  };
}
