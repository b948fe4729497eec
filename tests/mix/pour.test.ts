import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../src/colour/ciede2000.ts';
import type { Lab } from '../../src/colour/lab.ts';
import {
  MixProblem,
  matchColour,
  orderOfAddition,
  pourMatch,
  pourRecipe,
  predictMix,
  tubeSet,
  wholeParts,
} from '../../src/mix/index.ts';
import { WEIGHED } from '../tolerances.ts';
import { inventedPalette } from './invented-palette.ts';

const palette = inventedPalette();
const lab = (L: number, a: number, b: number): Lab<'D65/10deg'> => ({ L, a, b, white: 'D65/10deg' });
const scale = { resolution: 0.01, smallestPour: 0.02 };
const sky = { 'green-blue': 0.05, 'warm-red': 0.2, white: 9.75 };

describe('what is refused, in one sentence', () => {
  it('a scale that cannot be, and an amount under the smallest pour', () => {
    const target = { lab: lab(70, 0, -10) };
    expect(() => pourRecipe(palette, target, sky, { grams: 5, scale: { resolution: 0 } })).toThrow(
      /steps of 0 g/,
    );
    expect(() =>
      pourRecipe(palette, target, sky, { grams: 5, scale: { resolution: 0.1, smallestPour: -1 } }),
    ).toThrow(/smallest pour is -1 g/);
    expect(() =>
      pourRecipe(palette, target, sky, { grams: 0.05, scale: { resolution: 0.01, smallestPour: 0.1 } }),
    ).toThrow(/cannot be poured when the smallest pour is 0.1 g/);
  });

  it('volume without densities', () => {
    const run = (): unknown =>
      wholeParts(palette, { lab: lab(70, 0, -10) }, sky, { basis: 'volume', densities: { white: 2.1 } });
    expect(run).toThrow(MixProblem);
    expect(run).toThrow(
      'Parts by volume need the density of every tube, and that of "green-blue" is not known; enter it, or mix by mass.',
    );
  });

  it('more parts than anyone counts', () => {
    expect(() => wholeParts(palette, { lab: lab(70, 0, -10) }, sky, { mostParts: 500 })).toThrow(/500 parts/);
  });
});

describe('grams on a scale', () => {
  it('whole steps, no pour under the smallest, at least what was wanted and not much more', () => {
    fc.assert(
      fc.property(
        fc.record({
          L: fc.integer({ min: 30, max: 85 }),
          a: fc.integer({ min: -15, max: 20 }),
          b: fc.integer({ min: -15, max: 25 }),
          grams: fc.integer({ min: 3, max: 60 }),
          resolution: fc.constantFrom(0.01, 0.05, 0.1),
        }),
        ({ L, a, b, grams, resolution }) => {
          const target = { lab: lab(L, a, b) };
          const exact = matchColour(palette, target).recipes[0]!;
          const smallestPour = 2 * resolution;
          const pour = pourRecipe(palette, target, exact.masses, {
            grams,
            scale: { resolution, smallestPour },
          });
          for (const g of Object.values(pour.masses)) {
            expect(Math.abs(g / resolution - Math.round(g / resolution))).toBeLessThan(WEIGHED / resolution);
            expect(g).toBeGreaterThanOrEqual(smallestPour - WEIGHED);
          }
          expect(pour.grams).toBeGreaterThanOrEqual(grams - WEIGHED);
          expect(pour.grams).toBeLessThanOrEqual(1.1 * grams + resolution);
          expect(pour.deltaE00).toBeCloseTo(ciede2000(target.lab, predictMix(palette, pour.masses).lab), 10);
          if (pour.roundedDeltaE00 !== null)
            expect(pour.deltaE00).toBeLessThanOrEqual(pour.roundedDeltaE00 + 1e-6);
        },
      ),
      { seed: 62, numRuns: 15 },
    );
  });

  it('beats rounding by a good margin where strong tubes are few grams', () => {
    const targets = [
      lab(70, -8, -14),
      lab(62, 14, 8),
      lab(80, -4, 16),
      lab(55, 2, -18),
      lab(75, 9, -3),
      lab(66, -12, 5),
    ];
    const gains = targets.map((t) => {
      const exact = matchColour(palette, { lab: t }).recipes[0]!;
      const pour = pourRecipe(palette, { lab: t }, exact.masses, {
        grams: 5,
        scale: { resolution: 0.05, smallestPour: 0.05 },
      });
      return { ours: pour.deltaE00, rounded: pour.roundedDeltaE00! };
    });
    const mean = (k: 'ours' | 'rounded'): number => gains.reduce((s, x) => s + x[k], 0) / gains.length;
    expect(mean('ours')).toBeLessThan(0.75 * mean('rounded'));
  });

  it('looks among other recipes for one that pours well', () => {
    const target = { lab: lab(62, 10, 12) };
    const { recipes: pours } = pourMatch(palette, target, {
      grams: 8,
      scale: { resolution: 0.1, smallestPour: 0.3 },
      count: 3,
    });
    expect(pours.length).toBeGreaterThan(0);
    const first = pourRecipe(palette, target, matchColour(palette, target).recipes[0]!.masses, {
      grams: 8,
      scale: { resolution: 0.1, smallestPour: 0.3 },
    });
    expect(pours[0]!.deltaE00).toBeLessThanOrEqual(first.deltaE00 + 1e-9);
  });
});

describe('a strong tube under the smallest pour', () => {
  const target = { lab: predictMix(palette, { white: 100, 'green-blue': 0.3, 'yellow-earth': 4 }).lab };
  const exact = { white: 100, 'green-blue': 0.3, 'yellow-earth': 4 };
  const options = { grams: 10, scale: { resolution: 0.01, smallestPour: 0.1 } };

  it('is let down first: a pre-tint that can be weighed brings the colour back', () => {
    const pour = pourRecipe(palette, target, exact, options);
    const { preTint } = pour;
    expect(preTint!.tints).toHaveLength(1);
    const [tint] = preTint!.tints;
    expect(tint!.strong).toBe('green-blue');
    expect(tint!.light).toBe('white');
    expect(tint!.make['green-blue']).toBeGreaterThanOrEqual(0.1 - WEIGHED);
    expect(tint!.make['white']! / tint!.make['green-blue']!).toBeCloseTo(tint!.parts, 9);
    expect(tint!.pour).toBeGreaterThanOrEqual(0.1 - WEIGHED);
    expect(tint!.pour).toBeLessThanOrEqual(tint!.make['white']! + tint!.make['green-blue']! + WEIGHED);
    expect(preTint!.deltaE00).toBeLessThan(0.5);
    expect(preTint!.deltaE00).toBeLessThan(pour.deltaE00);
    expect(pour.noPreTint).toEqual([]);
  });

  it('is let down beside another one: each gets its own pre-tint, and the colour is what comes out of both', () => {
    const both = { white: 100, 'green-blue': 0.4, 'red-lake': 0.8, 'yellow-earth': 9 };
    const wanted = { lab: predictMix(palette, both).lab };
    const { preTint, noPreTint } = pourRecipe(palette, wanted, both, { ...options, grams: 8 });
    expect(preTint!.tints.map((t) => t.strong).toSorted()).toEqual(['green-blue', 'red-lake']);
    expect(noPreTint).toEqual([]);
    const mixed: Record<string, number> = { ...preTint!.masses };
    for (const { strong, light, parts, make, pour } of preTint!.tints) {
      for (const g of [...Object.values(make), pour]) {
        expect(g).toBeGreaterThanOrEqual(0.1 - WEIGHED);
        expect(Math.abs(g / 0.01 - Math.round(g / 0.01))).toBeLessThan(1e-6);
      }
      expect(pour).toBeLessThanOrEqual(make[strong]! + make[light]! + WEIGHED);
      mixed[strong] = (mixed[strong] ?? 0) + pour / (1 + parts);
      mixed[light] = (mixed[light] ?? 0) + (pour * parts) / (1 + parts);
    }
    for (const g of Object.values(preTint!.masses)) expect(g).toBeGreaterThanOrEqual(0.1 - WEIGHED);
    expect(ciede2000(wanted.lab, predictMix(palette, mixed).lab)).toBeCloseTo(preTint!.deltaE00, 9);
    expect(preTint!.deltaE00).toBeLessThan(0.5);
  });

  it('gets one sentence where no pre-tint helps: nothing to let it down with, or hardly nearer', () => {
    // Half a gram of three strong tubes: the fullest is itself a few pours.
    const dark = { 'dark-earth': 1, black: 0.06, 'deep-blue': 1 };
    const little = pourRecipe(palette, { lab: predictMix(palette, dark).lab }, dark, {
      grams: 0.3,
      scale: { resolution: 0.01, smallestPour: 0.1 },
    });
    expect(little.leftOut).toContain('black');
    expect(little.preTint).toBeUndefined();
    expect(little.noPreTint).toHaveLength(1);
    expect(little.noPreTint[0]).toMatch(
      /black falls under the smallest pour and is left out; let down with /,
    );
    const hardly = { white: 100, 'yellow-earth': 0.004 };
    const { noPreTint, preTint } = pourRecipe(
      palette,
      { lab: predictMix(palette, hardly).lab },
      hardly,
      options,
    );
    expect(preTint).toBeUndefined();
    expect(noPreTint[0]).toMatch(/yellow-earth .* nearer by no more than 0\.\d\d\./);
    const unseen = { white: 100, 'yellow-earth': 0.00001 };
    const without = pourRecipe(palette, { lab: predictMix(palette, unseen).lab }, unseen, options);
    expect(without.noPreTint).toEqual([
      'yellow-earth falls under the smallest pour and is left out: without it the mix is as near.',
    ]);
  });

  it('is not advised where every pour can be weighed', () => {
    expect(pourRecipe(palette, target, exact, { ...options, grams: 400 }).preTint).toBeUndefined();
  });
});

describe('order of addition: dark into light', () => {
  it('starts with the light and ends with the strong, in small steps', () => {
    const order = orderOfAddition(tubeSet(palette), { 'green-blue': 0.2, white: 8, 'yellow-earth': 2 });
    expect(order.map((s) => s.tube)).toEqual(['white', 'yellow-earth', 'green-blue']);
    expect(order.map((s) => s.how)).toEqual(['start', 'add', 'in small steps']);
    expect(pourRecipe(palette, { lab: lab(70, 0, -10) }, sky, { grams: 5, scale }).order[0]!.how).toBe(
      'start',
    );
  });
});

describe('small whole parts', () => {
  const target = { lab: predictMix(palette, { white: 7, 'red-earth': 2, 'deep-blue': 1 }).lab };
  const exact = { white: 7.02, 'red-earth': 1.99, 'deep-blue': 0.99 };

  it('finds the parts a colour was made with, fewest parts first, each longer one nearer', () => {
    const found = wholeParts(palette, target, exact);
    expect(found.at(-1)!.parts).toEqual({ white: 7, 'red-earth': 2, 'deep-blue': 1 });
    expect(found.at(-1)!.deltaE00).toBeLessThan(1e-6);
    for (let i = 1; i < found.length; i++) {
      expect(found[i]!.total).toBeGreaterThan(found[i - 1]!.total);
      expect(found[i]!.deltaE00).toBeLessThan(found[i - 1]!.deltaE00);
    }
  });

  it('by volume they are the masses over the densities', () => {
    const densities = { white: 2, 'red-earth': 4, 'deep-blue': 1 };
    const made = { white: 2 * 5, 'red-earth': 4 * 2, 'deep-blue': 1 * 3 };
    const wanted = { lab: predictMix(palette, made).lab };
    const found = wholeParts(palette, wanted, made, { basis: 'volume', densities });
    expect(found.at(-1)!.parts).toEqual({ white: 5, 'red-earth': 2, 'deep-blue': 3 });
  });

  it('an exhaustive count can do no worse than rounding at the same number of parts', () => {
    const wanted = { lab: lab(64, 9, 14) };
    const { masses } = matchColour(palette, wanted, { maxTubes: 3 }).recipes[0]!;
    const rounded = Object.fromEntries(Object.entries(masses).map(([id, g]) => [id, Math.round(g)]));
    const found = wholeParts(palette, wanted, masses, { mostParts: 11 });
    expect(found.at(-1)!.deltaE00).toBeLessThanOrEqual(
      ciede2000(wanted.lab, predictMix(palette, rounded).lab) + 1e-9,
    );
  });

  it('ranks by what is made: a pre-tint that brings the colour counts, one that hardly helps does not', () => {
    // A pale blue: a drop of a strong blue, far under the smallest pour.
    const masses = { 'green-blue': 0.01, white: 10 };
    const pale = { lab: predictMix(palette, masses).lab };
    const { recipes } = pourMatch(palette, pale, {
      grams: 10,
      scale: { resolution: 0.01, smallestPour: 0.05 },
      closeEnough: 0.5,
      count: 4,
    });
    const [first] = recipes;
    expect(first!.made).toBe('with a pre-tint');
    expect(first!.deltaE00).toBe(first!.pour.preTint!.deltaE00);
    expect(first!.deltaE00).toBeLessThan(first!.pour.deltaE00);
    expect(first!.pour.preTint!.tints[0]!.pour).toBeGreaterThanOrEqual(0.05 - 1e-9);
    const least = Math.min(...recipes.map((r) => r.deltaE00));
    expect(first!.deltaE00 - least).toBeLessThan(0.5);
    for (const { made, deltaE00, pour } of recipes) {
      if (made === 'as poured') expect(deltaE00).toBe(pour.deltaE00);
    }
  });
});
