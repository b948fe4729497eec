import { GRID_SIZE } from '../colour/grid.ts';
import type { TubeConstants } from './constants.ts';
import type { MixingPalette } from './palette.ts';

/** A number computed from constants, with one standard deviation. */
export interface WithDoubt {
  readonly value: number;
  readonly sd: number;
}

/**
 * A number f(palette) with its standard deviation from the constants' covariance, to first order: f is computed again
 * with the tubes moved along each column of their factor. Shared columns move every tube at once.
 */
export function withDoubt(
  palette: MixingPalette,
  ids: readonly string[],
  f: (p: MixingPalette) => number,
): WithDoubt {
  const value = f(palette);
  let variance = 0;
  const along = (move: (t: TubeConstants) => Float64Array | undefined): void => {
    const up = f(moved(palette, move, 1));
    const down = f(moved(palette, move, -1));
    variance += ((up - down) / 2) ** 2;
  };
  for (const id of ids) {
    const tube = palette.tubes.find((t) => t.id === id)!;
    for (const column of tube.own) along((t) => (t.id === id ? column : undefined));
  }
  const shared = Math.max(0, ...palette.tubes.map((t) => t.shared.length));
  for (let j = 0; j < shared; j++) along((t) => t.shared[j]);
  return { value, sd: Math.sqrt(variance) };
}

function moved(
  palette: MixingPalette,
  move: (t: TubeConstants) => Float64Array | undefined,
  sign: number,
): MixingPalette {
  return {
    ...palette,
    tubes: palette.tubes.map((t) => {
      const column = move(t);
      if (!column) return t;
      return {
        ...t,
        lnK: t.lnK.map((v, i) => v + sign * column[i]!),
        lnS: t.lnS.map((v, i) => v + sign * column[GRID_SIZE + i]!),
      };
    }),
  };
}
