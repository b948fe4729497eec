import { DEFAULT_WHITE } from '../../colour/illuminant.ts';
import { type Lab, labJacobian, labOfReflectance } from '../../colour/lab.ts';
import { tristimulusWeights } from '../../colour/tristimulus.ts';
import { radiusOf } from '../lab-region.ts';
import type { DoubtOfMixture } from './doubt-space.ts';
import type { LabDoubt } from './update.ts';

export interface ColourDoubt {
  readonly lab: Lab;
  readonly slopes: LabDoubt;
  /** In (L, a, b), all doubt together. */
  readonly covariance: readonly (readonly number[])[];
  /** CIEDE2000 that the truth stays under 95 times in 100. */
  readonly radius: number;
}

/** A mixture's colour (D65/10deg), its slopes and covariance in Lab, and the 95 % radius as it is now. */
export function colourDoubt(doubt: DoubtOfMixture): ColourDoubt {
  const weights = tristimulusWeights(DEFAULT_WHITE);
  const J = labJacobian(doubt.measured, weights);
  const inLab = (column: Float64Array): number[] =>
    J.map((row) => row.reduce((sum, d, i) => sum + d * column[i]!, 0));
  const slopes = {
    shared: doubt.shared.map(inLab),
    own: new Map([...doubt.own].map(([id, columns]) => [id, columns.map(inLab)])),
    afresh: doubt.afresh.map(inLab),
  };
  const covariance = covarianceOf([...slopes.shared, ...[...slopes.own.values()].flat(), ...slopes.afresh]);
  const lab = labOfReflectance(doubt.measured, weights);
  return { lab, slopes, covariance, radius: radiusOf(lab, covariance) };
}

/** F F^T of columns of three. */
export function covarianceOf(columns: readonly (readonly number[])[]): number[][] {
  const covariance = [0, 1, 2].map(() => [0, 0, 0]);
  for (const g of columns) {
    for (let r = 0; r < 3; r++) for (let c = 0; c < 3; c++) covariance[r]![c]! += g[r]! * g[c]!;
  }
  return covariance;
}
