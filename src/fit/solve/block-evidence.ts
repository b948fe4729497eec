import { GRID_SIZE } from '../../colour/grid.ts';
import { choleskyInPlace, forwardInPlace, logDeterminant, subtractSquare } from '../linear/cholesky.ts';
import { addTransposed } from '../model/accumulate.ts';
import { emptyArrow } from '../model/arrow.ts';
import { columnsOf } from '../model/columns.ts';
import { type Evaluation, evaluateAt, foldsClipping, lineariseAt } from '../model/linearise.ts';
import { readingsOnGrid } from '../model/on-grid.ts';
import { freePassing } from '../model/passing-spectra.ts';
import { addPriors } from '../model/priors.ts';
import type { FitProblem, Group } from '../model/problem.ts';
import { smoothColumns } from '../model/weights.ts';

/** The weight of a group whose cost is not asked for. */
const NOTHING: Float64Array = new Float64Array(0);
/** Independent differences of a spectrum: what its roughness scales. */
const ROUGH_RANK = GRID_SIZE - 1;

/** Minus ln probability of a block's readings, for sizes of misfit (in ln K/S), haze (reflectance) and roughness. */
export type BlockEvidence = (sd: number, haze: number, roughness?: Float64Array) => number;

/**
 * Minus ln probability of a block's readings as a function of the sizes of misfit, haze and roughness (type II maximum
 * likelihood; D. J. C. MacKay, "Bayesian Interpolation", Neural Computation 4 (1992) 415-447):
 *   least cost + (ln det C + ln det H - ln det P)/2,
 * C = D + U T^2 U^T the covariance of the readings, H the curvature and P that of the priors. The slopes J are those where
 * the block stands, which is close by; the step that a size would ask for is taken to first order.
 *
 * Misfit and haze are taken as unknowns of their own, z ~ N(0, 1), the readings being J h + U T z and noise D. With h
 * eliminated, H0 = J^T D^-1 J + P, what is left for z is S = I + T Q T,
 *   Q = U^T D^-1 U - U^T D^-1 J H0^-1 J^T D^-1 U,  and det C det H = det D det H0 det S,
 * so that a size asks for S alone, which is small.
 */
export function blockEvidence(problem: FitProblem, x: Float64Array, b: number): BlockEvidence {
  const { layout } = problem;
  const { offset, size, tubes } = layout.blocks[b]!;
  const groups = new Set(problem.groups.flatMap((g, k) => (layout.blockOfPile[g.pile] === b ? [k] : [])));
  const weights = problem.groups.map((group, k) => (groups.has(k) ? noiseWeight(problem, group) : NOTHING));
  const known = evaluateAt(problem, weights, x, groups, b);
  const readings = known.cost - addPriors(problem, x, null, b);
  const latent = latentOf(problem, known, groups, weights, b);
  const { count } = latent;
  const room = emptyArrow(layout, b);

  const eliminated = (roughness: Float64Array): Eliminated | undefined => {
    const under = { ...problem, roughness };
    const { system } = lineariseAt(under, weights, x, groups, b, known, room);
    const L = system.bb[b]!;
    if (!choleskyInPlace(L, size)) return undefined;
    const z = system.gradient.slice(offset, offset + size);
    forwardInPlace(L, size, z, 1);
    const Y = latent.bySlopes.slice();
    forwardInPlace(L, size, Y, count);
    const Q = latent.among.slice();
    subtractSquare(Q, Y, size, count);
    const gradient = latent.gradient.slice();
    let fall = 0;
    for (let k = 0; k < size; k++) {
      const v = z[k]!;
      fall += (v * v) / 2;
      for (let a = 0; a < count; a++) gradient[a]! -= Y[k * count + a]! * v;
    }
    const cost = readings + addPriors(under, x, null, b) - fall;
    const prior = tubes.reduce((sum, t) => sum + ROUGH_RANK * Math.log(roughness[t]!), 0);
    return { value: cost + prior + (latent.logDetNoise + logDeterminant(L, size)) / 2, Q, gradient };
  };

  let last: { roughness: Float64Array; at: Eliminated | undefined } | undefined;
  const S = new Float64Array(count * count);
  const y = new Float64Array(count);
  return (sd, haze, roughness = problem.roughness) => {
    if (last?.roughness !== roughness) last = { roughness, at: eliminated(roughness) };
    if (!last.at) return Infinity;
    const { value, Q, gradient } = last.at;
    for (let a = 0; a < count; a++) {
      const ta = latent.isHaze[a] ? haze : sd;
      for (let c = 0; c < a; c++) S[a * count + c] = ta * Q[a * count + c]! * (latent.isHaze[c] ? haze : sd);
      S[a * count + a] = 1 + ta * ta * Q[a * count + a]!;
      y[a] = ta * gradient[a]!;
    }
    if (!choleskyInPlace(S, count)) return Infinity;
    forwardInPlace(S, count, y, 1);
    let fall = 0;
    for (let a = 0; a < count; a++) fall += (y[a]! * y[a]!) / 2;
    return value - fall + logDeterminant(S, count) / 2;
  };
}

/** What is left when a block's own unknowns are eliminated. */
interface Eliminated {
  /** The evidence without misfit and haze. */
  readonly value: number;
  /** Lower triangle. */
  readonly Q: Float64Array;
  readonly gradient: Float64Array;
}

/** Misfit and haze of all groups of a block as unknowns of size 1. */
interface Latent {
  readonly count: number;
  readonly isHaze: readonly boolean[];
  /** J^T D^-1 U: a row per unknown of the block. */
  readonly bySlopes: Float64Array;
  /** U^T D^-1 U. */
  readonly among: Float64Array;
  /** -U^T D^-1 r. */
  readonly gradient: Float64Array;
  readonly logDetNoise: number;
}

function latentOf(
  problem: FitProblem,
  { state, groups: predicted }: Evaluation,
  groups: ReadonlySet<number>,
  weights: readonly Float64Array[],
  b: number,
): Latent {
  const { layout } = problem;
  const { offset, size } = layout.blocks[b]!;
  const columns = new Map(
    [...groups].map((g) => [g, smoothColumns(problem, problem.groups[g]!, predicted[g]!, 1, 1)]),
  );
  const isHaze = [...columns.values()].flatMap((U) => U.map((_, k) => k === 0));
  const count = isHaze.length;
  const bySlopes = new Float64Array(size * count);
  const among = new Float64Array(count * count);
  const gradient = new Float64Array(count);
  const row = new Float64Array(layout.size);
  const folded = foldsClipping(problem);
  let logDetNoise = 0;
  let first = 0;
  for (const [g, U] of columns) {
    const group = problem.groups[g]!;
    const at = predicted[g]!;
    const W = weights[g]!;
    const n = at.residual.length;
    for (let i = 0; i < n; i++) logDetNoise -= Math.log(W[i * n + i]!);
    freePassing();
    const J = columnsOf(problem, state, group, at, folded, b);
    U.forEach((u, k) => {
      const weighed = u.map((v, i) => v * W[i * n + i]!);
      row.fill(0);
      addTransposed(J, readingsOnGrid(problem, weighed, at, folded), 1, row);
      for (let i = 0; i < size; i++) bySlopes[i * count + first + k] = row[offset + i]!;
      for (let c = 0; c < U.length; c++) among[(first + k) * count + first + c] = dot(weighed, U[c]!);
      gradient[first + k] = -dot(weighed, at.residual);
    });
    first += U.length;
  }
  return { count, isHaze, bySlopes, among, gradient, logDetNoise };
}

/** D^-1 as a full matrix. */
function noiseWeight({ channels }: FitProblem, { swatches }: Group): Float64Array {
  const n = swatches.length * channels;
  const W = new Float64Array(n * n);
  swatches.forEach(({ variance }, s) => {
    for (let c = 0; c < channels; c++) W[(s * channels + c) * (n + 1)] = 1 / variance[c]!;
  });
  return W;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
