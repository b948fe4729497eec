/**
 * A new tube from a short ladder, with the old tube of the same pigment as prior. Old constants z0 ~ N(m0, C0); the new
 * tube is z1 = z0 + d with d ~ N(0, V + u B): V a wide spread of level, B the spread of shape between tubes of one
 * pigment, u how unlike these two are; the short ladder's fit saw z1 as N(m1, C1). u is learned by maximising the
 * probability of m1 - m0 ~ N(0, C0 + V + u B + C1) (type II maximum likelihood), then z1 is the product of the two
 * normals: gain G = P (P + C1)^-1, P = C0 + V + u B, m = m0 + G (m1 - m0), C = (I - G) P. Textbook linear-normal
 * updating (e.g. Kalman 1960, J. Basic Eng. 82:35-45).
 */
import { CholeskyDecomposition, EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { GRID_SIZE } from '../../colour/grid.ts';
import type { TubeConstants } from '../../fit/constants.ts';
import { levelCovariance, shapeCovariance } from './batch-spread.ts';
import { say } from '../sentences.ts';

export interface ReplacedTube {
  readonly constants: TubeConstants;
  /**
   * Variance of the difference in shape, in units of the usual spread between tubes of one pigment: 0 alike, 1 usual;
   * above 4 unlike, and the old tube is left out.
   */
  readonly unlikeness: number;
  /** Share of the final constants' certainty that the old tube gave, 0..1. */
  readonly oldTubeWeight: number;
  readonly words: string;
}

const SIZE = 2 * GRID_SIZE;
/** Added to variances so that a tube given without doubt can still be inverted. */
const FLOOR = 1e-8;
/**
 * From here on the old tube is left out. B allows smooth differences only, and a tube of another kind differs in the
 * places of its edges too, which the old tube's certainty would then hold where they were.
 */
const UNLIKE = 4;
const UNLIKE_WORDS = say('unlike');
/** Unlikeness tried, from the same pot to another pigment. */
const UNLIKENESS = Array.from({ length: 41 }, (_, i) => 10 ** (-3 + i * 0.125));

/**
 * @param measured the short ladder's own fit; @param old the tube it replaces, in the same white.
 * Both with covariance columns; shared columns must be those of one palette (or zero).
 */
export function oldTubeAsPrior(measured: TubeConstants, old: TubeConstants): ReplacedTube {
  const C0 = covariance(old);
  const C1 = covariance(measured);
  const level = new Matrix(levelCovariance());
  const shape = new Matrix(shapeCovariance());
  const m0 = stack(old);
  const d = Matrix.sub(stack(measured), m0);
  const unlikeness = learnUnlikeness(Matrix.add(Matrix.add(C0, C1), level), shape, d);
  if (unlikeness > UNLIKE) return { constants: measured, unlikeness, oldTubeWeight: 0, words: UNLIKE_WORDS };
  const spread = Matrix.add(level, Matrix.mul(shape, unlikeness));
  const P = Matrix.add(C0, spread);
  const G = new CholeskyDecomposition(Matrix.add(P, C1)).solve(P).transpose();
  const z = Matrix.add(m0, G.mmul(d)).to1DArray();
  const keep = Matrix.sub(Matrix.eye(SIZE), G);
  const own = Matrix.add(
    Matrix.add(
      keep.mmul(ownCovariance(old)).mmul(keep.transpose()),
      keep.mmul(spread).mmul(keep.transpose()),
    ),
    G.mmul(ownCovariance(measured)).mmul(G.transpose()),
  );
  const oldTubeWeight = keep.trace() / SIZE;
  return {
    constants: {
      id: measured.id,
      lnK: Float64Array.from(z.slice(0, GRID_SIZE)),
      lnS: Float64Array.from(z.slice(GRID_SIZE)),
      own: factorOf(own),
      shared: sharedColumns(old, measured, keep, G),
    },
    unlikeness,
    oldTubeWeight,
    words: wordsFor(unlikeness, oldTubeWeight),
  };
}

/**
 * -2 ln of the probability of d ~ N(0, A + u B), least over u: with A = L L^T and L^-1 B L^-T = Q diag(l) Q^T the
 * determinant is |A| prod(1 + u l) and the square sum y^2 / (1 + u l), y = Q^T L^-1 d; one decomposition for all u.
 */
function learnUnlikeness(A: Matrix, B: Matrix, d: Matrix): number {
  const L = new CholeskyDecomposition(A).lowerTriangularMatrix;
  const half = forward(L, B);
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(forward(L, half.transpose()), {
    assumeSymmetric: true,
  });
  const y = eigenvectorMatrix.transpose().mmul(forward(L, d)).to1DArray();
  let best = { u: UNLIKENESS[0]!, cost: Number.POSITIVE_INFINITY };
  for (const u of UNLIKENESS) {
    let cost = 0;
    realEigenvalues.forEach((l, i) => {
      const v = 1 + u * Math.max(0, l);
      cost += y[i]! ** 2 / v + Math.log(v);
    });
    if (cost < best.cost) best = { u, cost };
  }
  return best.u;
}

/** L^-1 M by forward substitution. */
function forward(L: Matrix, M: Matrix): Matrix {
  const out = M.clone();
  for (let r = 0; r < L.rows; r++) {
    for (let c = 0; c < out.columns; c++) {
      let v = out.get(r, c);
      for (let k = 0; k < r; k++) v -= L.get(r, k) * out.get(k, c);
      out.set(r, c, v / L.get(r, r));
    }
  }
  return out;
}

function stack(t: TubeConstants): Matrix {
  return Matrix.columnVector([...t.lnK, ...t.lnS]);
}

function fromColumns(columns: readonly Float64Array[]): Matrix {
  const C = Matrix.eye(SIZE).mul(FLOOR);
  for (const f of columns) {
    for (let r = 0; r < SIZE; r++) for (let c = 0; c < SIZE; c++) C.set(r, c, C.get(r, c) + f[r]! * f[c]!);
  }
  return C;
}

const ownCovariance = (t: TubeConstants): Matrix => fromColumns(t.own);
const covariance = (t: TubeConstants): Matrix => fromColumns([...t.own, ...t.shared]);

/** Shared doubt moves both measurements at once, so it passes through the same two gains. */
function sharedColumns(old: TubeConstants, measured: TubeConstants, keep: Matrix, G: Matrix): Float64Array[] {
  const count = Math.max(old.shared.length, measured.shared.length);
  const column = (t: TubeConstants, j: number): Matrix =>
    Matrix.columnVector([...(t.shared[j] ?? new Float64Array(SIZE))]);
  return Array.from({ length: count }, (_, j) =>
    Float64Array.from(Matrix.add(keep.mmul(column(old, j)), G.mmul(column(measured, j))).to1DArray()),
  );
}

/** Columns whose outer products sum to C, least ones left out below a millionth of the largest variance. */
function factorOf(C: Matrix): Float64Array[] {
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(C, { assumeSymmetric: true });
  const largest = Math.max(...realEigenvalues);
  return realEigenvalues.flatMap((value, j) =>
    value > 1e-6 * largest
      ? [Float64Array.from(eigenvectorMatrix.getColumn(j), (v) => v * Math.sqrt(value))]
      : [],
  );
}

function wordsFor(unlikeness: number, weight: number): string {
  const share = say('share-of-old', { percent: (100 * weight).toFixed(0) });
  if (unlikeness < 0.3) return say('much-like', { share });
  return say('usual-difference', { share });
}
