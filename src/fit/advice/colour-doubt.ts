import { DEFAULT_WHITE } from '../../colour/illuminant.ts';
import { type Lab, labJacobian, labOfReflectance } from '../../colour/lab.ts';
import { tristimulusWeights } from '../../colour/tristimulus.ts';
import { GRID_SIZE } from '../../colour/grid.ts';
import { discrepancyColumns } from '../discrepancy.ts';
import { frameColumns } from '../frame-doubt.ts';
import { radiusOf } from '../lab-region.ts';
import { type MixingPalette, tubeOf } from '../palette.ts';
import { predictSlopes } from '../predict.ts';
import type { LabDoubt } from './update.ts';

export interface ColourDoubt {
  readonly lab: Lab;
  readonly slopes: LabDoubt;
  /** In (L, a, b), all doubt together. */
  readonly covariance: readonly (readonly number[])[];
  /** CIEDE2000 that the truth stays under 95 times in 100. */
  readonly radius: number;
}

/**
 * A mixture's colour (D65/10deg), its slopes and covariance in Lab, and the 95 % radius as it is now. Each tube's 72
 * numbers go to Lab by one matrix of three rows, so that a column of its factor costs three sums.
 * @throws RangeError as `sharesOf` does.
 */
export function colourDoubt(palette: MixingPalette, masses: Readonly<Record<string, number>>): ColourDoubt {
  const weights = tristimulusWeights(DEFAULT_WHITE);
  const at = predictSlopes(palette, masses);
  const J = labJacobian(at.measured, weights);
  const own = new Map<string, number[][]>();
  const sharedCount = Math.max(0, ...palette.tubes.map((t) => t.shared.length));
  const shared = Array.from({ length: sharedCount }, () => [0, 0, 0]);
  for (const { id, K, S } of at.parts) {
    const tube = tubeOf(palette, id);
    const M = J.map((row) => {
      const m = new Float64Array(2 * GRID_SIZE);
      for (let i = 0; i < GRID_SIZE; i++) {
        m[i] = row[i]! * at.dK[i]! * K[i]!;
        m[GRID_SIZE + i] = row[i]! * at.dS[i]! * S[i]!;
      }
      return m;
    });
    own.set(
      id,
      tube.own.map((column) => threeSums(M, column)),
    );
    tube.shared.forEach((column, j) => threeSums(M, column).forEach((sum, r) => (shared[j]![r]! += sum)));
  }
  for (const [j, column] of frameColumns(palette, at)) {
    threeSums(J, column).forEach((sum, r) => (shared[j]![r]! += sum));
  }
  const byLnKS = at.dK.map((d, i) => (d * at.K[i]! - at.dS[i]! * at.S[i]!) / 2);
  const D = J.map((row) => byLnKS.map((d, i) => d * row[i]!));
  const afresh = discrepancyColumns(palette.discrepancy).map((column) => threeSums(D, column));
  const { sdHaze } = palette.discrepancy;
  if (sdHaze) afresh.push(J.map((row) => sdHaze * row.reduce((sum, v) => sum + v, 0)));
  const slopes = { shared, own, afresh };
  const covariance = covarianceOf([...shared, ...[...own.values()].flat(), ...afresh]);
  const lab = labOfReflectance(at.measured, weights);
  return { lab, slopes, covariance, radius: radiusOf(lab, covariance) };
}

/** A column by three rows, in one pass over it. */
function threeSums(rows: readonly Float64Array[], column: Float64Array): number[] {
  const [first, second, third] = rows as [Float64Array, Float64Array, Float64Array];
  let a = 0;
  let b = 0;
  let c = 0;
  for (let i = 0; i < column.length; i++) {
    const v = column[i]!;
    a += first[i]! * v;
    b += second[i]! * v;
    c += third[i]! * v;
  }
  return [a, b, c];
}

/** F F^T of columns of three. */
export function covarianceOf(columns: readonly (readonly number[])[]): number[][] {
  const covariance: [number[], number[], number[]] = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ];
  for (const g of columns) {
    for (let r = 0; r < 3; r++) for (let c = 0; c < 3; c++) covariance[r]![c]! += g[r]! * g[c]!;
  }
  return covariance;
}
