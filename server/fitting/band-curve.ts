import { GRID_SIZE } from '../../src/colour/grid.ts';
import type { TubeConstants } from '../../src/fit/constants.ts';
import type { z } from 'zod';
import type { bandCurveSchema } from '../api/fits.ts';

export type BandCurve = z.infer<typeof bandCurveSchema>;

/** Two-sided 95 % of the normal distribution. */
export const Z95 = 1.959963984540054;

/** K and S of a tube with their 95 % bands; normal in the logarithm, so the bands are lopsided. */
export function constantCurves(constants: TubeConstants): { K: BandCurve; S: BandCurve } {
  const curve = (ln: ArrayLike<number>, offset: number): BandCurve => {
    const value: number[] = [];
    const low: number[] = [];
    const high: number[] = [];
    for (let i = 0; i < GRID_SIZE; i += 1) {
      const variance = [...constants.own, ...constants.shared].reduce(
        (sum, c) => sum + c[offset + i]! ** 2,
        0,
      );
      const half = Z95 * Math.sqrt(variance);
      value.push(Math.exp(ln[i]!));
      low.push(Math.exp(ln[i]! - half));
      high.push(Math.exp(ln[i]! + half));
    }
    return { value, low, high };
  };
  return { K: curve(constants.lnK, 0), S: curve(constants.lnS, GRID_SIZE) };
}

/** A reflectance with its 95 % band from a factor of its covariance. Not below zero: no film reads less than nothing. */
export function reflectanceCurve(
  measured: ArrayLike<number>,
  factor: readonly ArrayLike<number>[],
): BandCurve {
  const value = Array.from(measured);
  const half = value.map((_, i) => Z95 * Math.sqrt(factor.reduce((sum, c) => sum + c[i]! ** 2, 0)));
  return {
    value,
    low: value.map((v, i) => Math.max(0, v - half[i]!)),
    high: value.map((v, i) => v + half[i]!),
  };
}
