import { GRID_SIZE } from '../../colour/grid.ts';
import { type Column, accumulate } from './accumulate.ts';
import { type ArrowSystem, emptyArrow } from './arrow.ts';
import { type ModelState, type SwatchSlopes, mixtureOf, predictSwatch, stateAt } from './forward.ts';
import { addPriors } from './priors.ts';
import type { FitProblem, Group } from './problem.ts';
import { reportedMean } from './reported.ts';

const N = GRID_SIZE;

/** Readings of a group as predicted, its residuals, and how each channel answers the grid. */
export interface GroupPrediction {
  readonly slopes: readonly SwatchSlopes[];
  /** Predicted readings, swatch after swatch. */
  readonly predicted: Float64Array;
  readonly residual: Float64Array;
  /** Slope of the reported by the true reading: 1 but near a zero that clips. */
  readonly reported: Float64Array;
  readonly lnKS: readonly Float64Array[];
}

export function predictGroup(problem: FitProblem, state: ModelState, group: Group): GroupPrediction {
  const mixture = mixtureOf(problem, state, group);
  const { A, channels, channelAt, clipped, noise } = problem;
  const count = group.swatches.length * channels;
  const predicted = new Float64Array(count);
  const residual = new Float64Array(count);
  const reported = new Float64Array(count).fill(1);
  const slopes: SwatchSlopes[] = [];
  const lnKS: Float64Array[] = [];
  group.swatches.forEach((observed, s) => {
    const at = predictSwatch(state, mixture, observed.film, observed.card);
    slopes.push(at);
    lnKS.push(at.dK.map((d, i) => (d * mixture.K[i]! - at.dS[i]! * mixture.S[i]!) / 2));
    for (let c = 0; c < channels; c++) {
      let v = 0;
      if (channelAt) v = at.measured[channelAt[c]!]!;
      else for (let i = 0; i < N; i++) v += A[c * N + i]! * at.measured[i]!;
      const k = s * channels + c;
      if (clipped) {
        const r = reportedMean(v, noise.sigma);
        v = r.value;
        reported[k] = r.slope;
      }
      predicted[k] = v;
      residual[k] = observed.mean[c]! - v;
    }
  });
  return { slopes, predicted, residual, reported, lnKS };
}

/** Half of r^T W r. */
function halfSquare(W: Float64Array, r: Float64Array): number {
  const n = r.length;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    let v = 0;
    const row = i * n;
    for (let j = 0; j < n; j++) v += W[row + j]! * r[j]!;
    sum += v * r[i]!;
  }
  return sum / 2;
}

/** Half the weighted sum of squares with the priors, at one point; weights are one matrix per group, `only` some groups. */
export function costAt(
  problem: FitProblem,
  weights: readonly Float64Array[],
  x: Float64Array,
  only?: ReadonlySet<number>,
  block?: number,
): number {
  const state = stateAt(problem, x);
  let cost = addPriors(problem, x, null, block);
  problem.groups.forEach((group, g) => {
    if (only && !only.has(g)) return;
    cost += halfSquare(weights[g]!, predictGroup(problem, state, group).residual);
  });
  return cost;
}

/**
 * Cost, gradient and Gauss-Newton normal equations at one point; of `only` some groups, and for the unknowns of one
 * `block` alone (the border's are left at zero), where they are given.
 */
export function lineariseAt(
  problem: FitProblem,
  weights: readonly Float64Array[],
  x: Float64Array,
  only?: ReadonlySet<number>,
  block?: number,
): { cost: number; system: ArrowSystem } {
  const system = emptyArrow(problem.layout, block);
  const state = stateAt(problem, x);
  let cost = addPriors(problem, x, system, block);
  problem.groups.forEach((group, g) => {
    if (only && !only.has(g)) return;
    const at = predictGroup(problem, state, group);
    cost += halfSquare(weights[g]!, at.residual);
    const { M, G } = onGrid(problem, weights[g]!, at);
    const columns = columnsOf(problem, state, group, at.slopes);
    const { offset = 0, size = Infinity } = block === undefined ? {} : problem.layout.blocks[block]!;
    // Of one block, only its own unknowns are asked for.
    const own = block === undefined ? columns : columns.filter((c) => c.at >= offset && c.at < offset + size);
    accumulate(system, problem.layout.blockOfPile[group.pile]!, own, M, G);
  });
  return { cost, system };
}

/**
 * A^T W A and A^T W r for each pair of swatches: the weights carried back to the grid. Where each channel is one grid
 * wavelength (`problem.channelAt`) that is a matter of placing numbers.
 */
function onGrid(
  problem: FitProblem,
  W: Float64Array,
  at: GroupPrediction,
): { M: Float64Array[][]; G: Float64Array[] } {
  const { A, channels, channelAt } = problem;
  const { residual, reported } = at;
  const count = at.slopes.length;
  const n = count * channels;
  const M: Float64Array[][] = [];
  const G: Float64Array[] = [];
  for (let s = 0; s < count; s++) {
    const right = new Float64Array(N);
    for (let c = 0; c < channels; c++) {
      let v = 0;
      const k = s * channels + c;
      for (let j = 0; j < n; j++) v += W[k * n + j]! * residual[j]!;
      v *= reported[k]!;
      if (channelAt) right[channelAt[c]!]! += v;
      else for (let i = 0; i < N; i++) right[i]! += A[c * N + i]! * v;
    }
    G.push(right);
    const row: Float64Array[] = [];
    for (let q = 0; q < count; q++) row.push(weightsOnGrid(problem, W, reported, s, q, n));
    M.push(row);
  }
  return { M, G };
}

function weightsOnGrid(
  { A, channels, channelAt }: FitProblem,
  W: Float64Array,
  reported: Float64Array,
  s: number,
  q: number,
  n: number,
): Float64Array {
  const block = new Float64Array(N * N);
  if (channelAt) {
    for (let c = 0; c < channels; c++) {
      const k = s * channels + c;
      const to = channelAt[c]! * N;
      for (let d = 0; d < channels; d++) {
        const l = q * channels + d;
        block[to + channelAt[d]!] = W[k * n + l]! * reported[k]! * reported[l]!;
      }
    }
    return block;
  }
  const half = new Float64Array(N);
  for (let c = 0; c < channels; c++) {
    const k = s * channels + c;
    half.fill(0);
    for (let d = 0; d < channels; d++) {
      const l = q * channels + d;
      const w = W[k * n + l]! * reported[k]! * reported[l]!;
      if (w === 0) continue;
      for (let i = 0; i < N; i++) half[i]! += w * A[d * N + i]!;
    }
    for (let i = 0; i < N; i++) {
      const a = A[c * N + i]!;
      if (a === 0) continue;
      for (let j = 0; j < N; j++) block[i * N + j]! += a * half[j]!;
    }
  }
  return block;
}

function columnsOf(
  problem: FitProblem,
  state: ModelState,
  group: Group,
  slopes: readonly SwatchSlopes[],
): Column[] {
  const { layout, white } = problem;
  const { shares } = mixtureOf(problem, state, group);
  const columns: Column[] = [];
  const spectra = (of: (s: SwatchSlopes, i: number) => number): Float64Array[] =>
    slopes.map((s) => Float64Array.from({ length: N }, (_, i) => of(s, i)));
  const chi = state.crowding;
  for (const t of group.tubes) {
    const c = shares.shares[t]!;
    const cs = t === white ? c * (1 + chi * (1 - c)) : c;
    const k = layout.lnK[t]!;
    const s = layout.lnS[t]!;
    if (k >= 0)
      columns.push({ at: k, diagonal: true, J: spectra((d, i) => d.dK[i]! * c * state.K[t * N + i]!) });
    if (s >= 0)
      columns.push({ at: s, diagonal: true, J: spectra((d, i) => d.dS[i]! * cs * state.S[t * N + i]!) });
  }
  problem.piles.piles[group.pile]!.errors.forEach((error, k) => {
    const slope = shares.slopes[k]!;
    const K = new Float64Array(N);
    const S = new Float64Array(N);
    for (const t of group.tubes) {
      const d = slope[t]!;
      const ds = t === white ? d * (1 + chi * (1 - 2 * shares.shares[t]!)) : d;
      for (let i = 0; i < N; i++) {
        K[i]! += d * state.K[t * N + i]!;
        S[i]! += ds * state.S[t * N + i]!;
      }
    }
    columns.push({
      at: layout.errors[error]!,
      diagonal: false,
      J: spectra((d, i) => d.dK[i]! * K[i]! + d.dS[i]! * S[i]!),
    });
  });
  const film = group.swatches[0]!.film;
  if (film >= 0) columns.push({ at: layout.films[film]!, diagonal: false, J: slopes.map((s) => s.dLnX) });
  const { shared } = layout;
  if (shared.k2 !== undefined) {
    columns.push({ at: shared.k2, diagonal: false, J: slopes.map((s) => s.dK2) });
  }
  if (shared.floor !== undefined) {
    columns.push({ at: shared.floor, diagonal: false, J: slopes.map((s) => s.dFloor) });
  }
  if (shared.crowding !== undefined && group.tubes.includes(white)) {
    const c = shares.shares[white]!;
    columns.push({
      at: shared.crowding,
      diagonal: false,
      J: spectra((d, i) => d.dS[i]! * c * (1 - c) * state.S[white * N + i]!),
    });
  }
  return columns;
}
