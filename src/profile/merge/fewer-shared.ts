/**
 * Fewer shared columns for a merged profile. Columns of all tubes are turned together (the eigenvectors of their Gram matrix)
 * so that the first hold most of what the tubes have in common; what the rest hold becomes each tube's own. No tube's doubt
 * is lessened: what is given up is that the least of the common doubt cancels, or adds, between two tubes.
 */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { GRID_SIZE } from '../../colour/grid.ts';
import type { TubeConstants } from '../../fit/constants.ts';
import { factorColumns } from '../../fit/linear/cholesky.ts';

const SIZE = 2 * GRID_SIZE;
/** Share of each own variance that may be left out; far under what the fit's own columns leave out. */
const LEFT_OUT = 1e-4;

/**
 * @param most shared columns allowed. @param kept places of columns that stay as they are, in their places: the frame
 * follows them. All of them stand among the first `most`.
 */
export function fewerShared(
  tubes: readonly TubeConstants[],
  most: number,
  kept: readonly number[],
): TubeConstants[] {
  const width = tubes[0]!.shared.length;
  if (width <= most) return tubes.map((t) => ({ ...t, own: fewerOwn(t.own) }));
  const free = Array.from({ length: width }, (_, j) => j).filter((j) => !kept.includes(j));
  const gram = Matrix.zeros(free.length, free.length);
  for (const t of tubes) {
    const F = new Matrix(free.map((j) => Array.from(t.shared[j]!)));
    gram.add(F.mmul(F.transpose()));
  }
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(gram, { assumeSymmetric: true });
  const order = realEigenvalues.map((value, k) => ({ value, k })).toSorted((p, q) => q.value - p.value);
  const places = Array.from({ length: most }, (_, j) => j).filter((j) => !kept.includes(j));
  return tubes.map((t) => {
    const turned = order.map(({ k }) => {
      const out = new Float64Array(SIZE);
      free.forEach((j, f) => {
        const v = eigenvectorMatrix.get(f, k);
        for (let i = 0; i < SIZE; i++) out[i]! += v * t.shared[j]![i]!;
      });
      return out;
    });
    const shared = t.shared.slice(0, most);
    places.forEach((j, p) => (shared[j] = turned[p]!));
    return { ...t, shared, own: fewerOwn([...t.own, ...turned.slice(places.length)]) };
  });
}

/** Columns with the same covariance, no more of them than there are constants. */
function fewerOwn(columns: readonly Float64Array[]): readonly Float64Array[] {
  if (columns.length <= SIZE) return columns;
  const C = new Float64Array(SIZE * SIZE);
  for (const f of columns) {
    for (let i = 0; i < SIZE; i++) for (let j = 0; j < SIZE; j++) C[i * SIZE + j]! += f[i]! * f[j]!;
  }
  return factorColumns(C, SIZE, LEFT_OUT);
}
