import { GRID_SIZE, flatSpectrum } from '../../colour/grid.ts';
import { discrepancyColumns } from '../discrepancy.ts';
import { choleskyInPlace, inverseFromCholesky, logDeterminant } from '../linear/cholesky.ts';
import { stateAt } from './forward.ts';
import { type GroupPrediction, predictGroup } from './linearise.ts';
import type { FitProblem, Group } from './problem.ts';

const N = GRID_SIZE;

/**
 * Covariance of a group's readings about the prediction: the noise of the means, and the equations' own error, one
 * smooth curve in ln(K/S) for the pile, carried to the readings by the slopes at `at`, and a veil of haze.
 */
function groupCovariance(
  problem: FitProblem,
  group: Group,
  at: GroupPrediction,
  columns: readonly Float64Array[],
  hazeSd: number,
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
  // The lower triangle is all that Cholesky reads.
  const add = (u: Float64Array): void => {
    for (let i = 0; i < n; i++) {
      const v = u[i]!;
      const to = i * n;
      for (let j = 0; j <= i; j++) C[to + j]! += v * u[j]!;
    }
  };
  // Rows of A sum to 1: a veil over the film adds the same to every channel.
  if (hazeSd > 0) add(at.reported.map((r) => r * hazeSd));
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
    add(u);
  }
  return C;
}

/** Standard deviation of the equations' own error in ln(K/S): one per block, and one for piles of white alone. */
export interface DiscrepancySds {
  readonly blocks: Float64Array;
  readonly white: number;
  /** Of a mixture of any tubes of the set. */
  readonly typical: number;
  /** Of haze from film to film, reflectance factor: a surface a little more or less sunk. */
  readonly haze: number;
}

export function sameDiscrepancy(problem: FitProblem, sd: number): DiscrepancySds {
  return { blocks: new Float64Array(problem.layout.blocks.length).fill(sd), white: sd, typical: sd, haze: 0 };
}

export interface GroupWeight {
  /** Inverse covariance of the group's readings. */
  readonly W: Float64Array;
  /** ln det of the covariance. */
  readonly logDet: number;
}

/** The weight of one group for slopes `at`. */
export function groupWeight(
  problem: FitProblem,
  group: Group,
  at: GroupPrediction,
  discrepancySd: number,
  hazeSd: number,
): GroupWeight {
  const columns =
    discrepancySd > 0
      ? discrepancyColumns({
          sdLnKS: flatSpectrum(discrepancySd),
          correlationNm: problem.settings.correlationNm,
        })
      : [];
  const C = groupCovariance(problem, group, at, columns, hazeSd);
  const n = group.swatches.length * problem.channels;
  if (!choleskyInPlace(C, n)) {
    throw new RangeError(
      `The readings of "${group.swatches[0]!.swatch.id}" have no noise; give the instrument's noise.`,
    );
  }
  return { W: inverseFromCholesky(C, n), logDet: logDeterminant(C, n) };
}

/** The weights of all groups at the point `x`. */
export function groupWeights(problem: FitProblem, x: Float64Array, sds: DiscrepancySds): Float64Array[] {
  const state = stateAt(problem, x);
  return problem.groups.map((group) => {
    const b = problem.layout.blockOfPile[group.pile]!;
    const sd = b < 0 ? sds.white : sds.blocks[b]!;
    return groupWeight(problem, group, predictGroup(problem, state, group), sd, sds.haze).W;
  });
}
