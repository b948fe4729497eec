import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { readSwatchSet } from '../../src/calibrate/swatch-set/read.ts';
import { GRID_NM } from '../../src/colour/grid.ts';
import { SeededNoise } from '../../src/device/practice/seeded-noise.ts';
import {
  type TransferPaint,
  transferReflectance,
} from '../../src/device/practice/transfer/transfer-reflectance.ts';

/**
 * Swatch sets of invented paints, read as radiative transfer would have it (src/device/practice/transfer): the truth
 * does not come from the equations under test.
 */
export interface MadeOptions {
  readonly white: TransferPaint;
  readonly paints: readonly TransferPaint[];
  readonly seed: number;
  readonly crowding?: number;
  /** Parts of white to one of paint, besides the masstone. @default [1, 4, 16] */
  readonly tints?: readonly number[];
  /** Standard deviations of one reading (relative) and of a weighed ratio. @default 0.002, 0.01 */
  readonly noise?: number;
  readonly weighing?: number;
}

export type Recipe = Readonly<Record<string, number>>;

/** Noise-free reflectance factor of a mixture of made paints, 45/0. */
export function made(paints: readonly TransferPaint[], recipe: Recipe, crowding = 0): Float64Array {
  const parts = Object.entries(recipe).map(([id, mass]) => ({
    paint: paints.find((p) => p.id === id)!,
    mass,
  }));
  return transferReflectance(parts, { geometry: '45/0', crowding });
}

/** The masstones, and each paint let down with the white. */
export function madeLadders(options: MadeOptions): SwatchSet {
  const { white, paints, tints = [1, 4, 16] } = options;
  const recipes: Recipe[] = [
    { [white.id]: 1 },
    ...paints.flatMap((p) => [{ [p.id]: 1 }, ...tints.map((w) => ({ [p.id]: 1, [white.id]: w }))]),
  ];
  return madeSet(options, recipes);
}

/** Any recipes, each painted with a weighing error and read three times with noise. */
export function madeSet(options: MadeOptions, recipes: readonly Recipe[]): SwatchSet {
  const { white, paints, seed, crowding = 0, noise = 0.002, weighing = 0.01 } = options;
  const all = [white, ...paints];
  const random = new SeededNoise(seed);
  return readSwatchSet({
    format: 'swatch-set',
    version: 1,
    title: 'invented paints',
    instrument: { kind: 'spectral', geometry: '45/0', wavelengths: [...GRID_NM] },
    weighing: { relativeSigma: Math.max(weighing, 1e-4) },
    noise: { sigma: 0.0003, relative: noise },
    tubes: all.map((p) => ({
      id: p.id,
      label: p.label,
      pigments: [...p.pigments],
      ...(p.id === white.id ? { role: 'white' } : {}),
    })),
    swatches: recipes.map((recipe, r) => {
      const poured = Object.fromEntries(
        Object.entries(recipe).map(([id, mass]) => [id, mass * Math.exp(weighing * random.normal())]),
      );
      const truth = made(all, poured, crowding);
      return {
        id: `s${r + 1}`,
        masses: recipe,
        readings: [1, 2, 3].map(() =>
          Array.from(truth, (v) => v * (1 + noise * random.normal()) + 0.0003 * random.normal()),
        ),
      };
    }),
  });
}
