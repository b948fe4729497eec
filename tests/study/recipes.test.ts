import { describe, expect, it } from 'vitest';
import { predictMix } from '../../src/mix/index.ts';
import { amountFor } from '../../src/study/amounts.ts';
import { paintNeeded } from '../../src/study/paint-needed.ts';
import { PICTURE_WHITE } from '../../src/study/picture-lab.ts';
import { recipesFor } from '../../src/study/recipes.ts';
import { RECIPE_FOUND_AGAIN, VALUE_HELD_L } from '../tolerances.ts';
import { madePalette } from './made-palette.ts';

const palette = madePalette();
const mixed = predictMix(palette, { white: 6, warm: 1, cool: 1 }, PICTURE_WHITE);

describe('recipes for families', () => {
  it('are none for no family', () => {
    expect(recipesFor(palette, [])).toEqual([]);
  });

  it('find a mix of the palette again', () => {
    const [found] = recipesFor(palette, [{ lab: mixed.lab }]);
    expect(found!.reached).toBe(true);
    expect(Math.abs(found!.recipe.shares['white']! - 0.75)).toBeLessThan(RECIPE_FOUND_AGAIN);
    expect(Math.abs(found!.recipe.shares['warm']! - 0.125)).toBeLessThan(RECIPE_FOUND_AGAIN);
  });

  it('keep the value of a colour the palette cannot reach, and say what was given up', () => {
    // A green: no mix of a warm and a cool of this kind is as strong.
    const green = { L: 50, a: -55, b: 40, white: PICTURE_WHITE } as const;
    const [found] = recipesFor(palette, [{ lab: green }]);
    expect(found!.reached).toBe(false);
    expect(Math.abs(found!.recipe.prediction.lab.L - green.L)).toBeLessThan(VALUE_HELD_L);
    expect(found!.recipe.split.chroma).toBeLessThan(-5);
  });

  it('come in the order of the families, with progress from nothing to all', () => {
    const shares: number[] = [];
    const labs = [mixed.lab, { ...mixed.lab, L: mixed.lab.L - 20 }];
    const found = recipesFor(
      palette,
      labs.map((lab) => ({ lab })),
      { watch: { onProgress: (done, of) => shares.push(done / of) } },
    );
    expect(found[0]!.recipe.prediction.lab.L).toBeGreaterThan(found[1]!.recipe.prediction.lab.L);
    expect(shares.every((s, i) => s >= 0 && s <= 1 && (i === 0 || s >= shares[i - 1]!))).toBe(true);
  });

  it('stop when told to', () => {
    expect(() => recipesFor(palette, [{ lab: mixed.lab }], { watch: { shouldStop: () => true } })).toThrow(
      /stopped/,
    );
  });

  it('refuse an empty palette in one sentence', () => {
    expect(() => recipesFor(madePalette([]), [{ lab: mixed.lab }])).toThrow(/no tubes; measure or import/);
  });
});

describe('paint for the whole study', () => {
  it('is nothing for no family', () => {
    expect(paintNeeded([])).toEqual([]);
  });

  it('sums each tube over the families, most first', () => {
    const canvas = { widthCentimetres: 10, heightCentimetres: 10, filmMicrometres: 100, loss: 0 };
    const density = { a: 1, b: 1 };
    const half = amountFor(0.5, { a: 1, b: 1 }, density, canvas);
    const rest = amountFor(0.5, { b: 1 }, density, canvas);
    // One millilitre in all: a quarter of a, three quarters of b.
    const [first, second] = paintNeeded([half, rest]);
    expect(first!.id).toBe('b');
    expect(first!.grams).toBeCloseTo(0.75, 12);
    expect(second!.grams).toBeCloseTo(0.25, 12);
  });
});
