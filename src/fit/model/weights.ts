import { GRID_SIZE, flatSpectrum } from '../../colour/grid.ts';
import { discrepancyColumns } from '../discrepancy.ts';
import { choleskyInPlace, inverseFromCholesky, logDeterminant } from '../linear/cholesky.ts';
import { stateAt } from './forward.ts';
import { type GroupPrediction, predictGroup } from './linearise.ts';
import type { FitProblem, Group } from './problem.ts';

const N = GRID_SIZE;

/**
 * Covariance of a group's readings about the prediction: the noise of the means, and the equations' own error, one
 * smooth curve in ln(K/S) for the pile, carried to the readings by the slopes at `at`.
 */
function groupCovariance(
  problem: FitProblem,
  group: Group,
  at: GroupPrediction,
  columns: readonly Float64Array[],
): Float64Array {
  const { A, channels, channelAt } = problem;
  const n = group.swatches.length * channels;
  const C = new Float64Array(n * n);
  group.swatches.forEach((observed, s) => {
    for (let c = 0; c < channels; c++) {
      const k = s * channels + c;
      C[k * n + k] = observed.variance[c]!;
    }
  });
  const u = new Float64Array(n);
  for (const column of columns) {
    for (let s = 0; s < group.swatches.length; s++) {
      const slope = at.lnKS[s]!;
      for (let c = 0; c < channels; c++) {
        let v = 0;
        if (channelAt) v = slope[channelAt[c]!]! * column[channelAt[c]!]!;
        else for (let i = 0; i < N; i++) v += A[c * N + i]! * slope[i]! * column[i]!;
        u[s * channels + c] = v * at.reported[s * channels + c]!;
      }
    }
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) C[i * n + j]! += u[i]! * u[j]!;
  }
  return C;
}

/** Inverse covariance of each group's readings at the point `x`, and the sum of ln det of the covariances. */
export function groupWeights(
  problem: FitProblem,
  x: Float64Array,
  discrepancySd: number,
): { weights: Float64Array[]; logDet: number } {
  const state = stateAt(problem, x);
  const columns =
    discrepancySd > 0
      ? discrepancyColumns({
          sdLnKS: flatSpectrum(discrepancySd),
          correlationNm: problem.settings.correlationNm,
        })
      : [];
  let logDet = 0;
  const weights = problem.groups.map((group) => {
    const C = groupCovariance(problem, group, predictGroup(problem, state, group), columns);
    const n = group.swatches.length * problem.channels;
    if (!choleskyInPlace(C, n))
      throw new RangeError(
        `The readings of "${group.swatches[0]!.swatch.id}" have no noise; give the instrument's noise.`,
      );
    logDet += logDeterminant(C, n);
    return inverseFromCholesky(C, n);
  });
  return { weights, logDet };
}
