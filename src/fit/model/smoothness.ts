import { GRID_SIZE } from '../../colour/grid.ts';

/** A normal prior on 36 numbers: its precision is `rough` over the square of the roughness, and `level` in every place. */
export interface SpectrumPrior {
  /** 36 by 36, row by row; nothing further than two places off the diagonal. */
  readonly rough: Float64Array;
  readonly level: number;
  readonly mean: number;
}

/** First and second differences of given standard deviations, and the mean level about `level[0]`. */
export function smoothnessPrior(
  first: number,
  second: number,
  level: readonly [mean: number, sd: number],
): SpectrumPrior {
  const n = GRID_SIZE;
  const rough = new Float64Array(n * n);
  const add = (at: number, d: readonly number[], sd: number): void => {
    for (let a = 0; a < d.length; a++) {
      for (let b = 0; b < d.length; b++) rough[(at + a) * n + at + b]! += (d[a]! * d[b]!) / sd ** 2;
    }
  };
  for (let i = 0; i + 1 < n; i++) add(i, [-1, 1], first);
  for (let i = 0; i + 2 < n; i++) add(i, [1, -2, 1], second);
  return { rough, level: 1 / (n * level[1]) ** 2, mean: level[0] };
}

/** The whole precision, 36 by 36, at a roughness of 1. */
export function precisionOf({ rough, level }: SpectrumPrior): Float64Array {
  return rough.map((v) => v + level);
}
