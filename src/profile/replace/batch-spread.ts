import { GRID_NM, GRID_SIZE } from '../../colour/grid.ts';

/**
 * How two tubes of one pigment may differ: in level (a common change of strength, ln K and ln S together, and a change
 * of scattering alone) and, smoothly, in the shape of their curves. The level is left wide, for even a short ladder
 * tells it from every wavelength at once; what an old tube can lend is its shape, whose spread is scaled by what the two
 * measurements show (old-tube-as-prior.ts). Widths are this project's choice; common practice, no source.
 */
export const STRENGTH_SD = 0.5;
export const SCATTERING_SD = 0.3;
export const SHAPE_SD = 0.05;
export const SHAPE_CORRELATION_NM = 60;

const n = GRID_SIZE;

/** 72 x 72 covariance of (ln K, ln S) differences of level. */
export function levelCovariance(): number[][] {
  return square((r, c) => STRENGTH_SD ** 2 + (r >= n && c >= n ? SCATTERING_SD ** 2 : 0));
}

/** 72 x 72 covariance of (ln K, ln S) differences of shape, for one unit of unlikeness. */
export function shapeCovariance(): number[][] {
  return square((r, c) => {
    const near = Math.exp(-(((GRID_NM[r % n]! - GRID_NM[c % n]!) / SHAPE_CORRELATION_NM) ** 2) / 2);
    return r < n === c < n ? SHAPE_SD ** 2 * near : 0;
  });
}

function square(of: (r: number, c: number) => number): number[][] {
  return Array.from({ length: 2 * n }, (_, r) => Array.from({ length: 2 * n }, (_c, c) => of(r, c)));
}
