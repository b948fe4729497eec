/**
 * One tube fitted twice, with two instruments, as one set of constants: the best linear combination of two normal numbers
 * that may share part of their doubt,
 *   m = m1 + G (m2 - m1),  G = (C1 - C12) D^-1,  D = C1 + C2 - C12 - C12^T  the covariance of m1 - m2
 * (linear-Gaussian updating; R. E. Kalman, J. Basic Eng. 82 (1960) 35-45). The two fits must be in units of one white and
 * under one surface. Both rest on one prior, of precision P: a curve less smooth than it takes leads both astray alike, by
 * C1 P and C2 P of it, so that C12 = C1 P C2 of what is each fit's own and the smoothness does not count twice.
 */
import { GRID_SIZE } from '../colour/grid.ts';
import type { TubeConstants } from './constants.ts';
import {
  backwardInPlace,
  choleskyInPlace,
  factorColumns,
  forwardInPlace,
  inverseFromCholesky,
} from './linear/cholesky.ts';
import { SETTINGS } from './model/settings.ts';
import { precisionOf, smoothnessPrior } from './model/smoothness.ts';
import { say } from './sentences.ts';

type Kind = keyof typeof SETTINGS;
const SIZE = 2 * GRID_SIZE;
/** Variance added so that a fit without doubt in some direction can be inverted; ln K, ln S. */
const LEAST = 1e-8;
/** Share of each variance that the kept columns may leave out. */
const LEFT_OUT = 1e-3;

export interface CombinedTube {
  readonly constants: TubeConstants;
  /** d^T (C1 + C2)^-1 d of the difference d of the two fits: about `degrees` where they agree. */
  readonly disagreement: number;
  readonly degrees: number;
  /** By how much both covariances were widened (standard deviations) because the fits disagreed; 1 where they agree. */
  readonly widened: number;
}

/**
 * @param first, second the same tube in the same white. Shared columns are of one palette: column j is driven by the same
 * number in both, with zeros where a fit knows nothing of it.
 * @param prior precision of the prior that both fits rest on, 72 by 72 (`commonPrior`). @default none
 * @returns constants with the first fit's id. Fits that disagree by more than their doubt are both doubted more, by Birge's
 * ratio (R. T. Birge, Phys. Rev. 40 (1932) 207-227); what they share of their doubt is not in their disagreement.
 * @throws RangeError for constants off the grid or shared columns of two palettes.
 */
export function combineTubes(
  first: TubeConstants,
  second: TubeConstants,
  prior: Float64Array = new Float64Array(SIZE * SIZE),
): CombinedTube {
  for (const t of [first, second]) {
    if (t.lnK.length !== GRID_SIZE || t.lnS.length !== GRID_SIZE) {
      throw new RangeError(
        say('combine-size', { tube: t.id, k: t.lnK.length, s: t.lnS.length, wanted: GRID_SIZE }),
      );
    }
  }
  if (first.shared.length !== second.shared.length) {
    const [one, two] = [first.shared.length, second.shared.length];
    throw new RangeError(say('combine-columns', { tube: first.id, one, two }));
  }
  const own1 = covarianceOf(first.own);
  const own2 = covarianceOf(second.own);
  const apart = first.shared.map((c, j) => c.map((v, i) => v - second.shared[j]![i]!));
  // C1 - C12: the shared part is s1 (s1 - s2)^T.
  const weight = asFarAsBorneOut(prior, own1, own2);
  const common = times(times(own1, prior), own2).map((v) => weight * v);
  const commonT = transposed(common);
  const numerator = addProducts(
    own1.map((v, i) => v - common[i]!),
    first.shared,
    apart,
  );
  const D = addProducts(
    own1.map((v, i) => v + own2[i]! - common[i]! - commonT[i]!),
    apart,
    apart,
  );
  const d = new Float64Array(SIZE);
  for (let i = 0; i < GRID_SIZE; i++) {
    d[i] = second.lnK[i]! - first.lnK[i]!;
    d[GRID_SIZE + i] = second.lnS[i]! - first.lnS[i]!;
  }
  const L = D.slice();
  choleskyInPlace(L, SIZE);
  const z = d.slice();
  forwardInPlace(L, SIZE, z, 1);
  const disagreement = z.reduce((sum, v) => sum + v * v, 0);
  const widened = Math.sqrt(Math.max(1, disagreement / SIZE));
  // G^T = D^-1 (C1 - C12)^T.
  const X = transposed(numerator);
  forwardInPlace(L, SIZE, X, SIZE);
  backwardInPlace(L, SIZE, X, SIZE);
  const gain = (v: Float64Array): Float64Array => {
    const out = new Float64Array(SIZE);
    for (let k = 0; k < SIZE; k++) for (let i = 0; i < SIZE; i++) out[i]! += X[k * SIZE + i]! * v[k]!;
    return out;
  };
  const step = gain(d);
  const rest = (v: Float64Array): Float64Array => {
    const g = gain(v);
    return v.map((value, i) => value - g[i]!);
  };
  const G = transposed(X);
  const restOf = G.map((v, at) => (at % (SIZE + 1) === 0 ? 1 : 0) - v);
  const both = times(times(restOf, common), X);
  const bothT = transposed(both);
  const one = times(times(restOf, own1), transposed(restOf));
  const two = times(times(G, own2), X);
  const own = one.map((v, at) => v + two[at]! + both[at]! + bothT[at]!);
  const shared = first.shared.map((c, j) => {
    const g = gain(second.shared[j]!);
    return rest(c).map((v, i) => v + g[i]!);
  });
  if (widened > 1) {
    // The disagreement is of what they do not share: that part alone is widened, and stays this tube's own.
    const alone = shared.filter((_, j) => !(moves(first.shared[j]!) && moves(second.shared[j]!)));
    const more = addProducts(own.slice(), alone, alone);
    for (let i = 0; i < own.length; i++) own[i]! += (widened ** 2 - 1) * more[i]!;
  }
  return {
    constants: {
      ...first,
      lnK: first.lnK.map((v, i) => v + step[i]!),
      lnS: first.lnS.map((v, i) => v + step[GRID_SIZE + i]!),
      own: factorColumns(own, SIZE, LEFT_OUT),
      shared,
    },
    disagreement,
    degrees: SIZE,
    widened,
  };
}

/** The prior that fits of two kinds of readings have in common: of each width the looser. */
export function commonPrior(a: Kind, b: Kind): Float64Array {
  const [p, q] = [SETTINGS[a], SETTINGS[b]];
  const K = precisionOf(smoothnessPrior(Math.max(p.k1st, q.k1st), Math.max(p.k2nd, q.k2nd), p.kLevel));
  const S = precisionOf(smoothnessPrior(Math.max(p.s1st, q.s1st), Math.max(p.s2nd, q.s2nd), p.sLevel));
  const P = new Float64Array(SIZE * SIZE);
  for (let i = 0; i < GRID_SIZE; i++) {
    P.set(K.subarray(i * GRID_SIZE, (i + 1) * GRID_SIZE), i * SIZE);
    P.set(S.subarray(i * GRID_SIZE, (i + 1) * GRID_SIZE), (GRID_SIZE + i) * SIZE + GRID_SIZE);
  }
  return P;
}

const moves = (column: Float64Array): boolean => column.some((v) => v !== 0);

function covarianceOf(columns: readonly Float64Array[]): Float64Array {
  const C = new Float64Array(SIZE * SIZE);
  for (let i = 0; i < SIZE; i++) C[i * SIZE + i] = LEAST;
  return addProducts(C, columns, columns);
}

/** C += sum of a b^T, in place. */
function addProducts(C: Float64Array, a: readonly Float64Array[], b: readonly Float64Array[]): Float64Array {
  a.forEach((p, k) => {
    const q = b[k]!;
    for (let i = 0; i < SIZE; i++) for (let j = 0; j < SIZE; j++) C[i * SIZE + j]! += p[i]! * q[j]!;
  });
  return C;
}

/** Shares of the prior's precision tried: a fit that was let be rougher than usual rests on less of it. */
const SHARES = [1, 0.7, 0.5, 0.35, 0.25, 0.17, 0.12];

/** The greatest of them under which neither fit is more doubtful than the prior alone; 0 where there is none. */
function asFarAsBorneOut(prior: Float64Array, ...fits: readonly Float64Array[]): number {
  const L = prior.slice();
  if (!choleskyInPlace(L, SIZE)) return 0;
  const alone = inverseFromCholesky(L, SIZE);
  const borneOut = (share: number): boolean =>
    fits.every((C) =>
      choleskyInPlace(
        alone.map((v, i) => v / share - C[i]!),
        SIZE,
      ),
    );
  return SHARES.find(borneOut) ?? 0;
}

function times(A: Float64Array, B: Float64Array): Float64Array {
  const out = new Float64Array(SIZE * SIZE);
  for (let i = 0; i < SIZE; i++) {
    for (let k = 0; k < SIZE; k++) {
      const a = A[i * SIZE + k]!;
      if (a === 0) continue;
      for (let j = 0; j < SIZE; j++) out[i * SIZE + j]! += a * B[k * SIZE + j]!;
    }
  }
  return out;
}

function transposed(A: Float64Array): Float64Array {
  return A.map((_, at) => A[(at % SIZE) * SIZE + Math.floor(at / SIZE)]!);
}
