/**
 * One tube fitted twice, with two instruments, as one set of constants: the product of two normal distributions,
 *   C = (C1^-1 + C2^-1)^-1,  m = m1 + G (m2 - m1),  G = C1 (C1 + C2)^-1
 * (linear-Gaussian updating; R. E. Kalman, J. Basic Eng. 82 (1960) 35-45). The two fits must be in units of one white and
 * under one surface. Each fit's prior is in its covariance, so that where neither saw anything the smoothness counts
 * twice: a little more certain than it should be, and only there.
 */
import { GRID_SIZE } from '../colour/grid.ts';
import type { TubeConstants } from './constants.ts';
import { backwardInPlace, choleskyInPlace, factorColumns, forwardInPlace } from './linear/cholesky.ts';

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
 * @param first, second the same tube in the same white; shared columns belong to each fit's own palette.
 * @returns constants with the first fit's id. Shared columns come as the first's, then the second's. Fits that disagree
 * by more than their doubt are both doubted more, by Birge's ratio (R. T. Birge, Phys. Rev. 40 (1932) 207-227).
 * @throws RangeError for constants off the grid.
 */
export function combineTubes(first: TubeConstants, second: TubeConstants): CombinedTube {
  for (const t of [first, second]) {
    if (t.lnK.length !== GRID_SIZE || t.lnS.length !== GRID_SIZE) {
      throw new RangeError(
        `"${t.id}" has ${t.lnK.length} and ${t.lnS.length} constants; both fits need ${GRID_SIZE}, so fit each first.`,
      );
    }
  }
  const C1 = covarianceOf([...first.own, ...first.shared]);
  const C2 = covarianceOf([...second.own, ...second.shared]);
  const d = new Float64Array(SIZE);
  for (let i = 0; i < GRID_SIZE; i++) {
    d[i] = second.lnK[i]! - first.lnK[i]!;
    d[GRID_SIZE + i] = second.lnS[i]! - first.lnS[i]!;
  }
  const L = C1.map((v, i) => v + C2[i]!);
  choleskyInPlace(L, SIZE);
  const z = d.slice();
  forwardInPlace(L, SIZE, z, 1);
  const disagreement = z.reduce((sum, v) => sum + v * v, 0);
  const widened = Math.sqrt(Math.max(1, disagreement / SIZE));
  // Row i of G is the solution for column i of C1: both are symmetric.
  const X = C1.slice();
  forwardInPlace(L, SIZE, X, SIZE);
  backwardInPlace(L, SIZE, X, SIZE);
  const gain = (v: Float64Array): Float64Array => {
    const out = new Float64Array(SIZE);
    for (let k = 0; k < SIZE; k++) for (let i = 0; i < SIZE; i++) out[i]! += X[k * SIZE + i]! * v[k]!;
    return out;
  };
  const step = gain(d);
  const fromFirst = (v: Float64Array): Float64Array => {
    const g = gain(v);
    return v.map((value, i) => widened * (value - g[i]!));
  };
  const fromSecond = (v: Float64Array): Float64Array => gain(v).map((value) => widened * value);
  const own = covarianceOf([...first.own.map(fromFirst), ...second.own.map(fromSecond)]);
  return {
    constants: {
      id: first.id,
      lnK: first.lnK.map((v, i) => v + step[i]!),
      lnS: first.lnS.map((v, i) => v + step[GRID_SIZE + i]!),
      own: factorColumns(own, SIZE, LEFT_OUT),
      shared: [...first.shared.map(fromFirst), ...second.shared.map(fromSecond)],
    },
    disagreement,
    degrees: SIZE,
    widened,
  };
}

function covarianceOf(columns: readonly Float64Array[]): Float64Array {
  const C = new Float64Array(SIZE * SIZE);
  for (let i = 0; i < SIZE; i++) C[i * SIZE + i] = LEAST;
  for (const f of columns) {
    for (let i = 0; i < SIZE; i++) for (let j = 0; j < SIZE; j++) C[i * SIZE + j]! += f[i]! * f[j]!;
  }
  return C;
}
