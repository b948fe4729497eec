/**
 * Outside check: a general-purpose simplex search (J. A. Nelder, R. Mead, Computer Journal 7 (1965) 308-313) written
 * here for the purpose, on the same problem with this project's prediction as the black box.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../src/colour/ciede2000.ts';
import { GRID_NM } from '../../src/colour/grid.ts';
import type { MixingPalette } from '../../src/fit/palette.ts';
import { carryRecipe } from '../../src/mix/carry-over/carry-recipe.ts';
import { carryValueString } from '../../src/mix/carry-over/carry-string.ts';
import { predictMix } from '../../src/mix/predict-mix.ts';
import { valueString } from '../../src/mix/value-string/value-string.ts';
import { OTHER_OPTIMISER, SAME_ARITHMETIC, STRENGTH_CARRIED } from '../tolerances.ts';
import { inventedPalette } from './invented-palette.ts';

/** The invented palette with one more tube, made from another by a change of ln K and ln S. */
function withNew(
  id: string,
  of: string,
  dLnK: (nm: number) => number,
  dLnS: (nm: number) => number,
): MixingPalette {
  const palette = inventedPalette(['white', 'deep-blue', 'red-earth', 'golden-yellow', 'black']);
  const old = palette.tubes.find((t) => t.id === of)!;
  const shifted = (v: Float64Array, d: (nm: number) => number): Float64Array =>
    v.map((x, i) => x + d(GRID_NM[i]!));
  return {
    ...palette,
    tubes: [...palette.tubes, { ...old, id, lnK: shifted(old.lnK, dLnK), lnS: shifted(old.lnS, dLnS) }],
  };
}
const recipe = { white: 8, 'deep-blue': 2, 'red-earth': 0.5 };
const replaced = { 'deep-blue': 'new-blue' };
const none = (): number => 0;

describe('a recipe carried to a new tube', () => {
  it('is the same recipe where the tube is the same paint', () => {
    const carried = carryRecipe(withNew('new-blue', 'deep-blue', none, none), recipe, replaced);
    expect(carried.masses['new-blue']).toBeCloseTo(2, 9);
    expect(carried.masses['white']).toBeCloseTo(8, 9);
    expect(carried.masses['red-earth']).toBeCloseTo(0.5, 9);
    expect(carried.deltaE00).toBeLessThan(SAME_ARITHMETIC);
    expect(carried.outcome).toBe('kept');
  });

  it('is itself where no tube of it was replaced', () => {
    const palette = withNew('new-blue', 'deep-blue', none, none);
    const carried = carryRecipe(palette, { white: 3, black: 1 }, replaced);
    expect(carried.masses).toEqual({ white: 3, black: 1 });
    expect(carried.sentence).toBe('The colour is kept: no pour changes.');
  });

  it('takes half the grams of a tube twice as strong, and leaves the others', () => {
    const twice = Math.log(2);
    const palette = withNew(
      'new-blue',
      'deep-blue',
      () => twice,
      () => twice,
    );
    const carried = carryRecipe(palette, recipe, replaced);
    expect(Math.abs(carried.masses['new-blue']! - 1)).toBeLessThan(STRENGTH_CARRIED);
    expect(Math.abs(carried.masses['white']! - 8)).toBeLessThan(STRENGTH_CARRIED);
    expect(carried.sentence).toBe('The colour is kept: 1.00 g of new-blue (was 2.00 g of deep-blue).');
    const tenGrams = carryRecipe(palette, recipe, replaced, { grams: 10 });
    expect(Object.values(tenGrams.masses).reduce((a, b) => a + b, 0)).toBeCloseTo(10, 9);
  });

  it('scales with any strength: grams times strength is one number', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 5, noNaN: true }), (strength) => {
        const ln = Math.log(strength);
        const carried = carryRecipe(
          withNew(
            'new-blue',
            'deep-blue',
            () => ln,
            () => ln,
          ),
          recipe,
          replaced,
        );
        expect(Math.abs((carried.masses['new-blue']! * strength) / 2 - 1)).toBeLessThan(STRENGTH_CARRIED);
      }),
      { numRuns: 30, seed: 11 },
    );
  });

  it('does not depend on the order of tubes or pours', () => {
    const palette = withNew(
      'new-blue',
      'deep-blue',
      (nm) => 0.2 + (nm - 550) / 900,
      () => 0.1,
    );
    const one = carryRecipe(palette, recipe, replaced);
    const turned = { ...palette, tubes: palette.tubes.toReversed() };
    const two = carryRecipe(turned, { 'red-earth': 0.5, 'deep-blue': 2, white: 8 }, replaced);
    for (const [id, grams] of Object.entries(one.masses)) expect(two.masses[id]).toBeCloseTo(grams, 9);
  });

  it('gets at least as near as a general-purpose search from the same start', () => {
    for (const slope of [-0.6, 0.3, 0.9]) {
      const palette = withNew(
        'new-blue',
        'deep-blue',
        (nm) => (slope * (nm - 550)) / 150,
        () => -0.1,
      );
      const target = predictMix(palette, recipe).lab;
      const off = (ln: readonly number[]): number =>
        ciede2000(
          target,
          predictMix(palette, { white: 8, 'new-blue': Math.exp(ln[0]!), 'red-earth': Math.exp(ln[1]!) }).lab,
        );
      const simplex = nelderMead(off, [Math.log(2), Math.log(0.5)]);
      const { deltaE00 } = carryRecipe(palette, recipe, replaced);
      expect(deltaE00).toBeLessThan(simplex + OTHER_OPTIMISER);
    }
  });

  it('says plainly where the new tube cannot reach', () => {
    const palette = withNew(
      'grey-blue',
      'deep-blue',
      () => -0.9,
      () => 1.2,
    );
    const carried = carryRecipe(palette, { white: 1, 'deep-blue': 6 }, { 'deep-blue': 'grey-blue' });
    expect(carried.outcome).toBe('out of reach');
    expect(carried.deltaE00).toBeGreaterThan(1);
    expect(carried.sentence).toMatch(
      /^These tubes cannot give the colour any more: the nearest mix is off by/,
    );
  });

  it('is refused for tubes that are not there, for one tube in two places, and for a tube already poured', () => {
    const palette = withNew('new-blue', 'deep-blue', none, none);
    expect(() => carryRecipe(palette, recipe, { 'deep-blue': 'other' })).toThrow(/no tube "other"/);
    expect(() => carryRecipe(palette, recipe, { 'deep-blue': 'new-blue', black: 'new-blue' })).toThrow(
      /two tubes/,
    );
    expect(() => carryRecipe(palette, { ...recipe, black: 1 }, { 'deep-blue': 'black' })).toThrow(/already/);
    expect(() => carryRecipe(palette, recipe, replaced, { grams: 0 })).toThrow(/grams above 0/);
  });
});

describe('a value string carried to a new tube', () => {
  const palette = withNew(
    'new-blue',
    'deep-blue',
    (nm) => 0.3 + (nm - 550) / 1500,
    () => 0.05,
  );
  const options = { steps: 5, kind: { tube: 'deep-blue' }, only: ['white', 'deep-blue'] } as const;

  it('keeps every value it can, and leaves out what the old string could not have', () => {
    const string = valueString(palette, { ...options, from: { value: 4 }, to: { value: 9 } });
    const carried = carryValueString(palette, string, replaced);
    expect(carried.steps).toHaveLength(5);
    for (const step of carried.steps) expect(Math.abs(step!.split.value)).toBeLessThan(0.02);
    expect(carryValueString(palette, { steps: [{ value: 1, ofFamily: true }] }, replaced).steps).toEqual([
      undefined,
    ]);
  });

  it('warns of a value the new tube cannot reach', () => {
    const weak = withNew(
      'new-blue',
      'deep-blue',
      () => -2,
      () => 0,
    );
    const { warnings } = carryValueString(weak, [{ 'deep-blue': 1 }, { 'deep-blue': 1, white: 9 }], replaced);
    expect(warnings.join(' ')).toMatch(/The value of \d\.\d\d cannot be kept/);
  });
});

function nelderMead(f: (x: readonly number[]) => number, start: readonly number[]): number {
  const n = start.length;
  let points = [start, ...start.map((_, i) => start.map((v, j) => (i === j ? v + 0.3 : v)))].map((x) => ({
    x,
    y: f(x),
  }));
  for (let round = 0; round < 400; round++) {
    points = points.toSorted((p, q) => p.y - q.y);
    const worst = points[n]!;
    const middle = start.map((_, j) => points.slice(0, n).reduce((s, p) => s + p.x[j]! / n, 0));
    const along = (t: number) => {
      const x = middle.map((m, j) => m + t * (m - worst.x[j]!));
      return { x, y: f(x) };
    };
    const mirrored = along(1);
    if (mirrored.y < points[0]!.y) {
      const far = along(2);
      points[n] = far.y < mirrored.y ? far : mirrored;
    } else if (mirrored.y < points[n - 1]!.y) points[n] = mirrored;
    else {
      const near = along(mirrored.y < worst.y ? 0.5 : -0.5);
      if (near.y < Math.min(worst.y, mirrored.y)) points[n] = near;
      else
        points = points.map(({ x }) => {
          const y = x.map((v, j) => (v + points[0]!.x[j]!) / 2);
          return { x: y, y: f(y) };
        });
    }
  }
  return Math.min(...points.map((p) => p.y));
}
