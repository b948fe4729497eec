/**
 * Crowding of the white through every search. Outside check: `predictReflectance` of the fit, which sums mixtures by
 * src/fit/mixture.ts and shares no code with the searches' sums; finite differences for slopes.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labOfReflectance } from '../../src/colour/lab.ts';
import { tristimulusWeights } from '../../src/colour/tristimulus.ts';
import type { MixingPalette } from '../../src/fit/palette.ts';
import { predictReflectance, predictWithCovariance } from '../../src/fit/predict.ts';
import { withBlends } from '../../src/mix/blend.ts';
import { matchColour, predictMix } from '../../src/mix/index.ts';
import { mixKernel } from '../../src/mix/kernel.ts';
import { reflectanceOfParts } from '../../src/mix/match/recipe.ts';
import { effectiveParts, tubeSet } from '../../src/mix/tube-set.ts';
import { SAME_ARITHMETIC } from '../tolerances.ts';
import { inventedPalette } from './invented-palette.ts';

const crowded: MixingPalette = {
  ...inventedPalette(['white', 'deep-blue', 'red-earth', 'yellow-earth', 'black']),
  crowding: 0.15,
};
const weights = tristimulusWeights('D65/10deg');
const gram = fc.double({ min: 0.01, max: 5, noNaN: true });
const anyMix = fc.record({
  white: gram,
  'deep-blue': gram,
  'red-earth': gram,
  'yellow-earth': gram,
  black: gram,
});
const largest = (a: ArrayLike<number>, b: ArrayLike<number>): number =>
  Math.max(...Array.from(a, (v, i) => Math.abs(v - b[i]!)));

describe('a white that crowds', () => {
  it('changes no masstone, and makes a tint lighter than without', () => {
    const plain = { ...crowded, crowding: 0 };
    expect(
      largest(predictMix(crowded, { white: 1 }).reflectance, predictMix(plain, { white: 1 }).reflectance),
    ).toBe(0);
    expect(predictMix(crowded, { 'deep-blue': 1, white: 4 }).lab.L).toBeGreaterThan(
      predictMix(plain, { 'deep-blue': 1, white: 4 }).lab.L,
    );
  });

  it('is the same in the kernel, in parts, in prediction and in the fit', () => {
    const set = tubeSet(crowded);
    const all = [...set.ids.keys()];
    const kernel = mixKernel(set);
    kernel.choose(all);
    fc.assert(
      fc.property(anyMix, (masses) => {
        const R = predictReflectance(crowded, masses).measured;
        const x = effectiveParts(set, masses);
        const lab = labOfReflectance(R, weights);
        kernel.colour(x);
        expect(largest([lab.L, lab.a, lab.b], kernel.u.subarray(0, 3))).toBeLessThan(SAME_ARITHMETIC);
        expect(largest(R, reflectanceOfParts(set, all, x))).toBeLessThan(SAME_ARITHMETIC);
        expect(largest(R, predictMix(crowded, masses).reflectance)).toBeLessThan(SAME_ARITHMETIC);
      }),
      { seed: 15, numRuns: 50 },
    );
  });

  it('has the slopes that finite differences find, with one tube and with all', () => {
    const set = tubeSet(crowded);
    for (const tubes of [[set.ids.indexOf('white'), set.ids.indexOf('black')], [...set.ids.keys()]]) {
      const kernel = mixKernel(set);
      kernel.choose(tubes);
      const x = Float64Array.from(tubes, (_, j) => 0.2 + 0.1 * j);
      kernel.colourAndSlopes(x);
      const J = kernel.J.slice();
      tubes.forEach((_, j) => {
        const h = 1e-6;
        const at = (d: number): Float64Array => {
          kernel.colour(Float64Array.from(x, (v, k) => (k === j ? v + d : v)));
          return kernel.u.slice();
        };
        const up = at(h);
        const down = at(-h);
        const FINITE_DIFFERENCE = 1e-5;
        for (let ch = 0; ch < 4; ch++) {
          expect(Math.abs((up[ch]! - down[ch]!) / (2 * h) - J[ch * tubes.length + j]!)).toBeLessThan(
            FINITE_DIFFERENCE,
          );
        }
      });
    }
  });

  it('counts the white in a made pile', () => {
    const pile = { 'deep-blue': 1, white: 2 };
    const set = withBlends(tubeSet(crowded), [{ id: 'pile', masses: pile }]);
    const tubes = [set.ids.indexOf('pile'), set.ids.indexOf('white')];
    const R = reflectanceOfParts(set, tubes, [3 * set.strength[tubes[0]!]!, 4 * set.strength[tubes[1]!]!]);
    expect(largest(R, predictReflectance(crowded, { 'deep-blue': 1, white: 6 }).measured)).toBeLessThan(
      SAME_ARITHMETIC,
    );
  });

  it('is found again: the recipe of a made colour comes back', () => {
    const masses = { 'deep-blue': 1, 'yellow-earth': 2, white: 5 };
    const wanted = predictReflectance(crowded, masses).measured;
    const [best] = matchColour(crowded, { lab: labOfReflectance(wanted, weights) }, { maxTubes: 3 }).recipes;
    expect(best!.deltaE00).toBeLessThan(0.01);
  });

  it('carries the same doubt as the fit does, haze from film to film included', () => {
    const hazy = { ...crowded, discrepancy: { ...crowded.discrepancy, sdHaze: 0.002 } };
    const masses = { 'deep-blue': 1, 'red-earth': 1, white: 3 };
    expect(predictMix(hazy, masses).interval.radius95).toBeCloseTo(
      predictWithCovariance(hazy, masses).labRegion.radius,
      8,
    );
  });
});
