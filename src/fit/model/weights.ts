import { GRID_SIZE } from '../../colour/grid.ts';
import { correlationColumns } from '../discrepancy.ts';
import { choleskyInPlace, forwardInPlace } from '../linear/cholesky.ts';
import { stateAt } from './forward.ts';
import { type GroupPrediction, predictGroup } from './predict-group.ts';
import type { FitProblem, Group } from './problem.ts';
import { say } from '../sentences.ts';

const N = GRID_SIZE;

/**
 * Columns U of the part of a group's covariance that is smooth: the equations' own error, one smooth curve in ln(K/S) for
 * the pile, carried to the readings by the slopes at `at`, and a veil of haze.
 */
export function smoothColumns(
  problem: FitProblem,
  group: Group,
  at: GroupPrediction,
  discrepancySd: number,
  hazeSd: number,
): Float64Array[] {
  const { A, channels, channelAt } = problem;
  const { mixture, reported, slopes } = at;
  const n = reported.length;
  const columns: Float64Array[] = [];
  // Rows of A sum to 1: a veil over the film adds the same to every channel.
  if (hazeSd > 0) columns.push(reported.map((r) => r * hazeSd));
  if (!(discrepancySd > 0)) return columns;
  const byLnKS = slopes.map(({ dK, dS }) => {
    const slope = new Float64Array(N);
    for (let i = 0; i < N; i++)
      slope[i] = (discrepancySd * (dK[i]! * mixture.K[i]! - dS[i]! * mixture.S[i]!)) / 2;
    return slope;
  });
  for (const column of correlationColumns(problem.settings.correlationNm)) {
    const u = new Float64Array(n);
    for (let s = 0; s < group.swatches.length; s++) {
      const slope = byLnKS[s]!;
      for (let c = 0; c < channels; c++) {
        let v = 0;
        if (channelAt) v = slope[channelAt[c]!]! * column[channelAt[c]!]!;
        else for (let i = 0; i < N; i++) v += A[c * N + i]! * slope[i]! * column[i]!;
        u[s * channels + c] = v * reported[s * channels + c]!;
      }
    }
    columns.push(u);
  }
  return columns;
}

/** Standard deviation of the equations' own error in ln(K/S): one per block, and one for piles of white alone. */
export interface DiscrepancySds {
  readonly blocks: Float64Array;
  readonly white: number;
  /** Of a mixture of any tubes of the set. */
  readonly typical: number;
  /** Of haze from film to film, reflectance factor, as the fit lets it in: a surface a little more or less sunk. */
  readonly haze: number;
  /** The same as the readings have it, which predictions carry. */
  readonly hazeFound: number;
}

export function sameDiscrepancy(problem: FitProblem, sd: number): DiscrepancySds {
  return {
    blocks: new Float64Array(problem.layout.blocks.length).fill(sd),
    white: sd,
    typical: sd,
    haze: 0,
    hazeFound: 0,
  };
}

/**
 * The weight of one group for slopes `at`: the inverse of C = D + U U^T, D the noise of the means and U few columns, by
 * Woodbury's identity C^-1 = D^-1 - Z^T Z, Z = L^-1 U^T D^-1, L L^T = I + U^T D^-1 U (M. A. Woodbury, Memorandum Report 42,
 * Statistical Research Group, Princeton 1950).
 */
function groupWeight(
  problem: FitProblem,
  group: Group,
  at: GroupPrediction,
  discrepancySd: number,
  hazeSd: number,
): Float64Array {
  const U = smoothColumns(problem, group, at, discrepancySd, hazeSd);
  const { channels } = problem;
  const n = group.swatches.length * channels;
  const m = U.length;
  const inverse = new Float64Array(n);
  group.swatches.forEach(({ variance }, s) => {
    for (let c = 0; c < channels; c++) inverse[s * channels + c] = 1 / variance[c]!;
  });
  const Z = new Float64Array(m * n);
  for (let a = 0; a < m; a++) for (let i = 0; i < n; i++) Z[a * n + i] = U[a]![i]! * inverse[i]!;
  const L = new Float64Array(m * m);
  for (let a = 0; a < m; a++) {
    for (let b = 0; b <= a; b++) {
      let v = a === b ? 1 : 0;
      for (let i = 0; i < n; i++) v += Z[a * n + i]! * U[b]![i]!;
      L[a * m + b] = v;
    }
  }
  if (!(inverse.every((v) => v > 0 && Number.isFinite(v)) && choleskyInPlace(L, m))) {
    throw new RangeError(say('no-noise', { swatch: group.swatches[0]!.swatch.id }));
  }
  forwardInPlace(L, m, Z, n);
  const W = new Float64Array(n * n);
  for (let i = 0; i < n; i++) W[i * n + i] = inverse[i]!;
  for (let a = 0; a < m; a++) {
    const from = a * n;
    for (let i = 0; i < n; i++) {
      const z = Z[from + i]!;
      const to = i * n;
      for (let j = 0; j <= i; j++) W[to + j]! -= z * Z[from + j]!;
    }
  }
  for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) W[j * n + i] = W[i * n + j]!;
  return W;
}

/** The weights of all groups at the point `x`. */
export function groupWeights(problem: FitProblem, x: Float64Array, sds: DiscrepancySds): Float64Array[] {
  const state = stateAt(problem, x);
  return problem.groups.map((group) => {
    const b = problem.layout.blockOfPile[group.pile]!;
    const sd = b < 0 ? sds.white : sds.blocks[b]!;
    return groupWeight(problem, group, predictGroup(problem, state, group), sd, sds.haze);
  });
}
