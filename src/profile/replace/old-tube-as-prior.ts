/**
 * A new tube from a short ladder, with the old tube of the same pigment as prior. Old constants z0 ~ N(m0, C0); the new
 * tube is z1 = z0 + d with d ~ N(0, u B), B the spread between tubes of one pigment and u how unlike these two are; the
 * short ladder's fit saw z1 as N(m1, C1). u is learned by maximising the probability of m1 - m0 ~ N(0, C0 + u B + C1)
 * (type II maximum likelihood), then z1 is the product of the two normals: gain G = P (P + C1)^-1, P = C0 + u B,
 * m = m0 + G (m1 - m0), C = (I - G) P. Textbook linear-normal updating (e.g. Kalman 1960, J. Basic Eng. 82:35-45).
 */
import { CholeskyDecomposition, EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { GRID_SIZE } from '../../colour/grid.ts';
import type { TubeConstants } from '../../fit/constants.ts';
import { batchCovariance } from './batch-spread.ts';

export interface ReplacedTube {
  readonly constants: TubeConstants;
  /** Variance of the difference in units of the usual spread between tubes of one pigment: 0 alike, 1 usual, above 4 unlike. */
  readonly unlikeness: number;
  /** Share of the final constants' certainty that the old tube gave, 0..1. */
  readonly oldTubeWeight: number;
  readonly words: string;
}

const SIZE = 2 * GRID_SIZE;
/** Added to variances so that a tube given without doubt can still be inverted. */
const FLOOR = 1e-8;
/** Unlikeness tried, from the same pot to another pigment. */
const UNLIKENESS = Array.from({ length: 41 }, (_, i) => 10 ** (-3 + i * 0.125));

/**
 * @param measured the short ladder's own fit; @param old the tube it replaces, in the same white.
 * Both with covariance columns; shared columns must be those of one palette (or zero).
 */
export function oldTubeAsPrior(measured: TubeConstants, old: TubeConstants): ReplacedTube {
  const C0 = covariance(old);
  const C1 = covariance(measured);
  const B = new Matrix(batchCovariance().map((r) => [...r]));
  const m0 = stack(old);
  const d = Matrix.sub(stack(measured), m0);
  const unlikeness = learnUnlikeness(C0, C1, B, d);
  const P = Matrix.add(C0, Matrix.mul(B, unlikeness));
  const G = new CholeskyDecomposition(Matrix.add(P, C1)).solve(P).transpose();
  const z = Matrix.add(m0, G.mmul(d)).to1DArray();
  const keep = Matrix.sub(Matrix.eye(SIZE), G);
  const own = Matrix.add(
    Matrix.add(
      keep.mmul(ownCovariance(old)).mmul(keep.transpose()),
      keep.mmul(Matrix.mul(B, unlikeness)).mmul(keep.transpose()),
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

function learnUnlikeness(C0: Matrix, C1: Matrix, B: Matrix, d: Matrix): number {
  let best = { u: UNLIKENESS[0]!, cost: Number.POSITIVE_INFINITY };
  for (const u of UNLIKENESS) {
    const V = Matrix.add(Matrix.add(C0, C1), Matrix.mul(B, u));
    const chol = new CholeskyDecomposition(V);
    const L = chol.lowerTriangularMatrix;
    let logDet = 0;
    for (let i = 0; i < SIZE; i++) logDet += 2 * Math.log(L.get(i, i));
    const cost = d.transpose().mmul(chol.solve(d)).get(0, 0) + logDet;
    if (cost < best.cost) best = { u, cost };
  }
  return best.u;
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
  const share = `the old tube carries ${(100 * weight).toFixed(0)} % of the result`;
  if (unlikeness < 0.3) return `The new tube is much like the old one; ${share}.`;
  if (unlikeness <= 4) return `The new tube differs as tubes of one pigment usually do; ${share}.`;
  return `The new tube is unlike the old one; ${share}. Pull a full ladder before trusting dark mixes.`;
}
