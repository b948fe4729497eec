import { GRID_NM, GRID_SIZE } from '../colour/grid.ts';
import type { Discrepancy } from './constants.ts';

/** Columns of a factor of exp(-(dlambda/l)^2 / 2) on the grid: pivoted Cholesky, stopped at this share of variance. */
const LEFT_OUT = 1e-4;
const kernels = new Map<number, Float64Array[]>();

/** Factor of the correlation on the grid; its columns are kept, for every prediction asks for them. */
export function correlationColumns(correlationNm: number): readonly Float64Array[] {
  const known = kernels.get(correlationNm);
  if (known) return known;
  const left = new Float64Array(GRID_SIZE).fill(1);
  const columns: Float64Array[] = [];
  while (columns.length < GRID_SIZE) {
    const pivot = left.indexOf(Math.max(...left));
    if (left[pivot]! < LEFT_OUT) break;
    const root = Math.sqrt(left[pivot]!);
    const column = Float64Array.from(GRID_NM, (nm, i) => {
      let c = Math.exp(-(((nm - GRID_NM[pivot]!) / correlationNm) ** 2) / 2);
      for (const before of columns) c -= before[i]! * before[pivot]!;
      return c / root;
    });
    columns.push(column);
    for (let i = 0; i < GRID_SIZE; i++) left[i] = Math.max(0, left[i]! - column[i]! ** 2);
  }
  kernels.set(correlationNm, columns);
  return columns;
}

/** Columns D with D D^T the covariance of the deviation in ln(K/S): sd(i) sd(j) exp(-(dlambda/l)^2 / 2). */
export function discrepancyColumns(discrepancy: Discrepancy): Float64Array[] {
  return correlationColumns(discrepancy.correlationNm).map((column) =>
    column.map((c, i) => c * discrepancy.sdLnKS[i]!),
  );
}

/** Columns of 72 by which a tube that the equations fit worse than is usual carries the rest of its misfit with it. */
export function misfitColumns(rest: Discrepancy): Float64Array[] {
  if (!rest.sdLnKS.some((sd) => sd > 0)) return [];
  // A deviation d in ln(K/S) at constant K S: half of it in ln K, half taken from ln S.
  return discrepancyColumns(rest).map((d) => {
    const column = new Float64Array(2 * GRID_SIZE);
    for (let i = 0; i < GRID_SIZE; i++) {
      column[i] = d[i]! / 2;
      column[GRID_SIZE + i] = -d[i]! / 2;
    }
    return column;
  });
}
