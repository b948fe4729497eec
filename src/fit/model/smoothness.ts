import { GRID_SIZE } from '../../colour/grid.ts';

/** A normal prior on 36 numbers: precision (full, row by row) and mean. */
export interface SpectrumPrior {
  readonly precision: Float64Array;
  readonly mean: Float64Array;
}

/** First and second differences of given standard deviations, and the mean level about `level[0]`. */
export function smoothnessPrior(
  first: number,
  second: number,
  level: readonly [mean: number, sd: number],
): SpectrumPrior {
  const n = GRID_SIZE;
  const precision = new Float64Array(n * n);
  const add = (at: number, d: readonly number[], sd: number): void => {
    for (let a = 0; a < d.length; a++) {
      for (let b = 0; b < d.length; b++) precision[(at + a) * n + at + b]! += (d[a]! * d[b]!) / sd ** 2;
    }
  };
  for (let i = 0; i + 1 < n; i++) add(i, [-1, 1], first);
  for (let i = 0; i + 2 < n; i++) add(i, [1, -2, 1], second);
  for (let i = 0; i < n * n; i++) precision[i]! += 1 / (n * level[1]) ** 2;
  return { precision, mean: new Float64Array(n).fill(level[0]) };
}
