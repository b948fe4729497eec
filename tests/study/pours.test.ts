import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { predictMix } from '../../src/mix/index.ts';
import { CANVAS_SETTINGS } from '../../src/study/amounts.ts';
import { PICTURE_WHITE } from '../../src/study/picture-lab.ts';
import { pourFamily } from '../../src/study/pours.ts';
import { recipesFor } from '../../src/study/recipes.ts';
import { madePalette } from './made-palette.ts';

const palette = madePalette();
const scale = { resolution: 0.01, smallestPour: 0.05 };
const settings = { canvas: CANVAS_SETTINGS, densities: {}, scale };
const labOf = (masses: Record<string, number>) => predictMix(palette, masses, PICTURE_WHITE).lab;
const exactOf = (masses: Record<string, number>) => [{ masses, deltaE00: 0 }];

describe('a family poured on a scale', () => {
  it('is refused without a recipe', () => {
    const family = { lab: labOf({ white: 1 }), share: 0.5 };
    expect(() => pourFamily(palette, family, [], settings)).toThrow(/no recipe to pour; find one/);
  });

  it('is one smallest pour where the area needs less than that', () => {
    const family = { lab: labOf({ white: 1 }), share: 0.001 };
    const { pour, needed } = pourFamily(palette, family, exactOf({ white: 1 }), settings);
    expect(needed).toBeLessThan(0.05);
    expect(pour.masses).toEqual({ white: 0.05 });
  });

  it('never asks for a pour under the smallest, nor between steps of the scale', () => {
    const amount = fc.double({ min: 0.001, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        amount,
        amount,
        amount,
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (white, warm, cool, share) => {
          const masses = { white, warm, cool };
          const { pour, needed } = pourFamily(
            palette,
            { lab: labOf(masses), share },
            exactOf(masses),
            settings,
          );
          for (const grams of Object.values(pour.masses)) {
            expect(grams).toBeGreaterThanOrEqual(0.05);
            expect(Math.abs(grams / 0.01 - Math.round(grams / 0.01))).toBeLessThan(1e-9);
          }
          // There is enough: no less than one step of the scale under what the area needs.
          expect(pour.grams).toBeGreaterThan(needed - 0.01);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('mixes more than is needed where a strong tube could not be weighed otherwise', () => {
    const masses = { white: 1, cool: 0.03 };
    // About 1 g is needed, of which 0.03 g is the cool.
    const { pour, needed } = pourFamily(
      palette,
      { lab: labOf(masses), share: 0.1 },
      exactOf(masses),
      settings,
    );
    expect(pour.grams).toBeGreaterThan(needed);
    expect(pour.masses['cool']).toBeGreaterThanOrEqual(0.05);
    expect(pour.deltaE00).toBeLessThan(1);
  });

  it('takes the recipe that comes nearest once poured, not the nearest exact one', () => {
    const lab = labOf({ white: 1 });
    const choice = [
      { masses: { white: 1, cool: 0.0001 }, deltaE00: 0 },
      { masses: { white: 1 }, deltaE00: 0.1 },
    ];
    expect(Object.keys(pourFamily(palette, { lab, share: 0.2 }, choice, settings).pour.masses)).toEqual([
      'white',
    ]);
  });

  it('leaves recipes of few tubes first where more bring it no nearer than an eye can tell', () => {
    const [found] = recipesFor(palette, [{ lab: labOf({ white: 5, warm: 1 }) }]);
    expect(Object.keys(found!.recipe.masses).sort()).toEqual(['warm', 'white']);
  });
});
