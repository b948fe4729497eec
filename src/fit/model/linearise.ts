import { GRID_SIZE } from '../../colour/grid.ts';
import { type Column, accumulate } from './accumulate.ts';
import { type ArrowSystem, emptyArrow } from './arrow.ts';
import {
  type ModelState,
  type PileMixture,
  type SwatchSlopes,
  mixtureOf,
  predictSwatch,
  stateAt,
} from './forward.ts';
import { addPriors } from './priors.ts';
import type { FitProblem, Group } from './problem.ts';
import { reportedMean } from './reported.ts';

const N = GRID_SIZE;

/** Readings of a group as predicted, its residuals, and how each channel answers the grid. */
export interface GroupPrediction {
  readonly mixture: PileMixture;
  readonly slopes: readonly SwatchSlopes[];
  /** Predicted readings, swatch after swatch. */
  readonly predicted: Float64Array;
  readonly residual: Float64Array;
  /** Slope of the reported by the true reading: 1 but near a zero that clips. */
  readonly reported: Float64Array;
}

export function predictGroup(problem: FitProblem, state: ModelState, group: Group): GroupPrediction {
  const mixture = mixtureOf(problem, state, group);
  const { A, channels, channelAt, clipped, noise } = problem;
  const count = group.swatches.length * channels;
  const predicted = new Float64Array(count);
  const residual = new Float64Array(count);
  const reported = new Float64Array(count).fill(1);
  const slopes: SwatchSlopes[] = [];
  group.swatches.forEach((observed, s) => {
    const at = predictSwatch(state, mixture, observed.film, observed.card);
    slopes.push(at);
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
  return { mixture, slopes, predicted, residual, reported };
}

/** Half of r^T W r; W is symmetric. */
export function halfSquare(W: Float64Array, r: Float64Array): number {
  const n = r.length;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    let v = 0;
    const row = i * n;
    for (let j = 0; j < i; j++) v += W[row + j]! * r[j]!;
    sum += (v + (W[row + i]! * r[i]!) / 2) * r[i]!;
  }
  return sum;
}

/** The predictions at one point and what they cost, so that the slopes there need no second prediction. */
export interface Evaluation {
  readonly state: ModelState;
  /** One per group; undefined for groups left out. */
  readonly groups: readonly (GroupPrediction | undefined)[];
  /** Half the weighted sum of squares with the priors. */
  readonly cost: number;
}

/** Predicts at one point; weights are one matrix per group, `only` some groups, `block` the priors of one block alone. */
export function evaluateAt(
  problem: FitProblem,
  weights: readonly Float64Array[],
  x: Float64Array,
  only?: ReadonlySet<number>,
  block?: number,
): Evaluation {
  const state = stateAt(problem, x, only);
  let cost = addPriors(problem, x, null, block);
  const groups = problem.groups.map((group, g) => {
    if (only && !only.has(g)) return undefined;
    const at = predictGroup(problem, state, group);
    cost += halfSquare(weights[g]!, at.residual);
    return at;
  });
  return { state, groups, cost };
}

/** Half the weighted sum of squares with the priors, at one point; as `evaluateAt`. */
export function costAt(
  problem: FitProblem,
  weights: readonly Float64Array[],
  x: Float64Array,
  only?: ReadonlySet<number>,
  block?: number,
): number {
  return evaluateAt(problem, weights, x, only, block).cost;
}

/** Half the weighted sum of squares of some groups' residuals, without any prior. */
export function readingsCost(
  problem: FitProblem,
  weights: readonly Float64Array[],
  x: Float64Array,
  only: ReadonlySet<number>,
): number {
  const state = stateAt(problem, x, only);
  let cost = 0;
  for (const g of only)
    cost += halfSquare(weights[g]!, predictGroup(problem, state, problem.groups[g]!).residual);
  return cost;
}

/**
 * Cost, gradient and Gauss-Newton normal equations at one point; of `only` some groups, and for the unknowns of one
 * `block` alone (the border's are left at zero), where they are given. `known` is what `evaluateAt` said of this point,
 * `room` a system that is done with.
 */
export function lineariseAt(
  problem: FitProblem,
  weights: readonly Float64Array[],
  x: Float64Array,
  only?: ReadonlySet<number>,
  block?: number,
  known: Evaluation = evaluateAt(problem, weights, x, only, block),
  room?: ArrowSystem,
): { cost: number; system: ArrowSystem } {
  const system = emptyArrow(problem.layout, block, room);
  addPriors(problem, x, system, block);
  const { offset = 0, size = Infinity } = block === undefined ? {} : problem.layout.blocks[block]!;
  problem.groups.forEach((group, g) => {
    const at = known.groups[g];
    if (!at) return;
    // A channel that is one wavelength takes its clipping into the slopes, and the weights stay as they are.
    const folded = problem.clipped && problem.channelAt !== undefined;
    const { M, G } = onGrid(problem, weights[g]!, at, folded);
    const slopes = folded ? at.slopes.map((s, i) => clippedSlopes(problem, s, at.reported, i)) : at.slopes;
    const columns = columnsOf(problem, known.state, group, at.mixture, slopes);
    // Of one block, only its own unknowns are asked for.
    const own = block === undefined ? columns : columns.filter((c) => c.at >= offset && c.at < offset + size);
    accumulate(system, problem.layout.blockOfPile[group.pile]!, own, M, G);
  });
  return { cost: known.cost, system };
}

/** Slopes of what is reported of a swatch, for channels of one wavelength each. */
function clippedSlopes(
  { channels, channelAt }: FitProblem,
  slopes: SwatchSlopes,
  reported: Float64Array,
  s: number,
): SwatchSlopes {
  const by = new Float64Array(N).fill(1);
  for (let c = 0; c < channels; c++) by[channelAt![c]!] = reported[s * channels + c]!;
  const scaled = (v: Float64Array): Float64Array => v.map((d, i) => d * by[i]!);
  return {
    measured: slopes.measured,
    dK: scaled(slopes.dK),
    dS: scaled(slopes.dS),
    dLnX: scaled(slopes.dLnX),
    dK2: scaled(slopes.dK2),
    dFloor: scaled(slopes.dFloor),
  };
}

/** A^T W A of weights that were carried to the grid before: they stay the same from step to step. */
const carried = new WeakMap<Float64Array, Float64Array[][]>();

/**
 * A^T W A and A^T W r for each pair of swatches: the weights carried back to the grid. Where each channel is one grid
 * wavelength (`problem.channelAt`) that is a matter of placing numbers. `folded`: the slopes hold the clipping.
 */
function onGrid(
  problem: FitProblem,
  W: Float64Array,
  at: GroupPrediction,
  folded: boolean,
): { M: Float64Array[][]; G: Float64Array[] } {
  const { A, channels, channelAt } = problem;
  const { residual, reported } = at;
  const count = at.slopes.length;
  const n = count * channels;
  const plain = folded || !problem.clipped;
  let M = plain ? carried.get(W) : undefined;
  if (!M) {
    M = at.slopes.map((_, s) =>
      at.slopes.map((__, q) => weightsOnGrid(problem, W, plain ? undefined : reported, s, q, n)),
    );
    if (plain) carried.set(W, M);
  }
  const G: Float64Array[] = [];
  for (let s = 0; s < count; s++) {
    const right = new Float64Array(N);
    for (let c = 0; c < channels; c++) {
      let v = 0;
      const k = s * channels + c;
      for (let j = 0; j < n; j++) v += W[k * n + j]! * residual[j]!;
      if (!plain) v *= reported[k]!;
      if (channelAt) right[channelAt[c]!]! += v;
      else for (let i = 0; i < N; i++) right[i]! += A[c * N + i]! * v;
    }
    G.push(right);
  }
  return { M, G };
}

function weightsOnGrid(
  { A, channels, channelAt }: FitProblem,
  W: Float64Array,
  reported: Float64Array | undefined,
  s: number,
  q: number,
  n: number,
): Float64Array {
  const block = new Float64Array(N * N);
  const by = (k: number, l: number): number => (reported ? reported[k]! * reported[l]! : 1);
  if (channelAt) {
    for (let c = 0; c < channels; c++) {
      const k = s * channels + c;
      const to = channelAt[c]! * N;
      for (let d = 0; d < channels; d++) {
        const l = q * channels + d;
        block[to + channelAt[d]!] = W[k * n + l]! * by(k, l);
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
      const w = W[k * n + l]! * by(k, l);
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
  { shares }: PileMixture,
  slopes: readonly SwatchSlopes[],
): Column[] {
  const { layout, white } = problem;
  const columns: Column[] = [];
  const chi = state.crowding;
  for (const t of group.tubes) {
    const c = shares.shares[t]!;
    const cs = t === white ? c * (1 + chi * (1 - c)) : c;
    const k = layout.lnK[t]!;
    const s = layout.lnS[t]!;
    const [fromK, fromS] = [state.K.subarray(t * N, (t + 1) * N), state.S.subarray(t * N, (t + 1) * N)];
    if (k >= 0) columns.push({ at: k, diagonal: true, J: slopes.map((d) => product(d.dK, fromK, c)) });
    if (s >= 0) columns.push({ at: s, diagonal: true, J: slopes.map((d) => product(d.dS, fromS, cs)) });
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
    const J = slopes.map((d) => {
      const column = product(d.dK, K, 1);
      for (let i = 0; i < N; i++) column[i]! += d.dS[i]! * S[i]!;
      return column;
    });
    columns.push({ at: layout.errors[error]!, diagonal: false, J });
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
    const S = state.S.subarray(white * N, (white + 1) * N);
    columns.push({
      at: shared.crowding,
      diagonal: false,
      J: slopes.map((d) => product(d.dS, S, c * (1 - c))),
    });
  }
  return columns;
}

/** a b times a number, wavelength by wavelength. */
function product(a: Float64Array, b: Float64Array, times: number): Float64Array {
  const out = new Float64Array(N);
  for (let i = 0; i < N; i++) out[i] = a[i]! * b[i]! * times;
  return out;
}
