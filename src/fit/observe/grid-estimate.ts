import { GRID_SIZE, type Spectrum } from '../../colour/grid.ts';
import { choleskyInPlace, inverseFromCholesky } from '../linear/cholesky.ts';

/** Second difference of reflectance allowed per 10 nm, against a reading good to a thousandth. */
const ROUGHNESS = 0.01;
const READING = 0.001;

/**
 * The smoothest spectrum that reads as given: (A^T A / s^2 + D2^T D2 / t^2)^-1 A^T y / s^2. Used for bare cards and for
 * a first guess, never in place of a fit in reading space.
 */
export function gridEstimator(rows: readonly Float64Array[]): (reading: ArrayLike<number>) => Spectrum {
  const n = GRID_SIZE;
  const H = new Float64Array(n * n);
  for (const row of rows) {
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) H[i * n + j]! += (row[i]! * row[j]!) / READING ** 2;
  }
  for (let k = 1; k + 1 < n; k++) {
    const d = [1, -2, 1];
    for (let a = 0; a < 3; a++) {
      for (let b = 0; b < 3; b++) H[(k - 1 + a) * n + (k - 1 + b)]! += (d[a]! * d[b]!) / ROUGHNESS ** 2;
    }
  }
  // Where a narrow response leaves the ends untouched, they are held level.
  for (const [i, j] of [
    [0, 1],
    [n - 1, n - 2],
  ] as const) {
    const w = 1 / ROUGHNESS ** 2;
    H[i * n + i]! += w;
    H[j * n + j]! += w;
    H[i * n + j]! -= w;
    H[j * n + i]! -= w;
  }
  choleskyInPlace(H, n);
  const inverse = inverseFromCholesky(H, n);
  return (reading) => {
    const right = new Float64Array(n);
    rows.forEach((row, k) => {
      for (let i = 0; i < n; i++) right[i]! += (row[i]! * reading[k]!) / READING ** 2;
    });
    return Float64Array.from({ length: n }, (_, i) => {
      let sum = 0;
      for (let j = 0; j < n; j++) sum += inverse[i * n + j]! * right[j]!;
      return sum;
    });
  };
}
