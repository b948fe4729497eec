/**
 * Mixing from a palette that was fitted, not made: paints of tests/fixtures/paint/transport-spectral.json, whose
 * readings and checks come from radiative transfer (H-functions under a Fresnel boundary) and not from the equations
 * that are fitted. A check is a mix with its noise-free reflectance, which no fit has seen.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSwatchSet } from '../../src/calibrate/swatch-set/read.ts';
import { ciede2000 } from '../../src/colour/ciede2000.ts';
import { labOfReflectance } from '../../src/colour/lab.ts';
import { tristimulusWeights } from '../../src/colour/tristimulus.ts';
import { fitPalette } from '../../src/fit/fit-palette.ts';
import { matchColour, pourMatch, predictMix, reachOf } from '../../src/mix/index.ts';
import { profileFromFit } from '../../src/profile/from-fit.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import { MATCHED_SHARE } from '../tolerances.ts';

interface Check {
  readonly id: string;
  readonly masses: Readonly<Record<string, number>>;
  readonly truth: readonly number[];
}
interface Fixture {
  readonly tubes: readonly { readonly id: string }[];
  readonly swatches: readonly { readonly masses: Readonly<Record<string, number>> }[];
  readonly checks: readonly Check[];
}

/** Four tubes of the fixture: a whole fit, in less of the time. */
const TUBES = ['white', 'deep-blue', 'warm-yellow', 'red-earth'];
const from = ({ masses }: { readonly masses: Readonly<Record<string, number>> }): boolean =>
  Object.keys(masses).every((id) => TUBES.includes(id));

const file = new URL('../fixtures/paint/transport-spectral.json', import.meta.url);
const fixture = JSON.parse(readFileSync(file, 'utf8')) as Fixture;
const checks = fixture.checks.filter(from);
const set = readSwatchSet({
  ...fixture,
  tubes: fixture.tubes.filter(({ id }) => TUBES.includes(id)),
  swatches: fixture.swatches.filter(from),
  checks: [],
});
const palette = paletteOf(
  profileFromFit(fitPalette(set, { leaveOneOut: false }), {
    created: '2026-11-01T09:00:00Z',
    generator: { name: 'tests', version: '0' },
  }),
);
const labOf = (R: ArrayLike<number>) => labOfReflectance(R, tristimulusWeights('D65/10deg'));

describe('a fitted palette', () => {
  it('states intervals that hold what its checks read', () => {
    const held = checks.filter(({ masses, truth }) => {
      const { lab, interval } = predictMix(palette, masses);
      return ciede2000(lab, labOf(truth)) <= interval.radius95;
    });
    // 95 of 100 are promised; of some thirty checks, three standard deviations fewer may hold.
    const n = checks.length;
    expect(n).toBeGreaterThan(20);
    expect(held.length).toBeGreaterThanOrEqual(Math.floor(0.95 * n - 3 * Math.sqrt(n * 0.95 * 0.05)));
  });

  it('matches what a check reads, from the same tubes in about the same shares', () => {
    const pairs = checks.filter(({ masses }) => Object.keys(masses).length === 2);
    for (const { id, masses, truth } of pairs) {
      const only = Object.keys(masses);
      const [best] = matchColour(palette, { spectrum: truth }, { only }).recipes;
      expect(best!.deltaE00, id).toBeLessThanOrEqual(best!.prediction.interval.radius95);
      const total = Object.values(masses).reduce((a, b) => a + b, 0);
      for (const tube of only) {
        expect(Math.abs((best!.shares[tube] ?? 0) - masses[tube]! / total), id).toBeLessThan(MATCHED_SHARE);
      }
    }
  });

  it('pours a check on a pocket scale within its own interval, and knows that it is inside', () => {
    for (const { id, truth } of checks.filter((_, i) => i % 8 === 0)) {
      const { recipes, reached } = pourMatch(
        palette,
        { spectrum: truth },
        { grams: 20, scale: { resolution: 0.01, smallestPour: 0.05 }, count: 1 },
      );
      const { radius95 } = recipes[0]!.pour.prediction.interval;
      expect(recipes[0]!.deltaE00, id).toBeLessThanOrEqual(radius95);
      if (reached) expect(reachOf(palette, { spectrum: truth }).inside, id).toBe(true);
    }
  });
});
