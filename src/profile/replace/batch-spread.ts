import { GRID_NM, GRID_SIZE } from '../../colour/grid.ts';

/**
 * How two tubes of one pigment may differ: a common change of strength (ln K and ln S together), a change of
 * scattering alone, and a smooth change of shape. Widths are this project's choice for one unit of "unlikeness" and
 * are scaled by what the two measurements show (`learnUnlikeness`); they are common practice, no source.
 */
export const STRENGTH_SD = 0.15;
export const SCATTERING_SD = 0.1;
export const SHAPE_SD = 0.05;
export const SHAPE_CORRELATION_NM = 60;

/** Covariance of (ln K, ln S) differences between two tubes of one pigment, 72 x 72, for one unit of unlikeness. */
export function batchCovariance(): Float64Array[] {
  const n = GRID_SIZE;
  return Array.from({ length: 2 * n }, (_, r) =>
    Float64Array.from({ length: 2 * n }, (_c, c) => {
      const near = Math.exp(-(((GRID_NM[r % n]! - GRID_NM[c % n]!) / SHAPE_CORRELATION_NM) ** 2) / 2);
      const sameCurve = r < n === c < n;
      const inS = r >= n && c >= n;
      return STRENGTH_SD ** 2 + (inS ? SCATTERING_SD ** 2 : 0) + (sameCurve ? SHAPE_SD ** 2 * near : 0);
    }),
  );
}
