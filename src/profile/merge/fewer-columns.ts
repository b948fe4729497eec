import { EigenvalueDecomposition, Matrix } from 'ml-matrix';

/** Share of the whole variance that may be left out; the fit's own columns leave out twice as much. */
const LEFT_OUT = 5e-3;

/** Columns with the same F F^T but for half a per cent of the whole variance, as few as it takes. */
export function fewerColumns(columns: readonly Float64Array[]): Float64Array[] {
  if (columns.length === 0) return [];
  const F = new Matrix(columns.map((c) => Array.from(c))).transpose();
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(F.mmul(F.transpose()), {
    assumeSymmetric: true,
  });
  const total = realEigenvalues.reduce((sum, v) => sum + Math.max(0, v), 0);
  let left = total;
  const order = realEigenvalues
    .map((value, j) => ({ value, j }))
    .toSorted((p, q) => q.value - p.value)
    .filter(({ value }) => {
      const needed = value > 0 && left > LEFT_OUT * total;
      left -= value;
      return needed;
    });
  return order.map(({ value, j }) =>
    Float64Array.from(eigenvectorMatrix.getColumn(j), (v) => v * Math.sqrt(value)),
  );
}
