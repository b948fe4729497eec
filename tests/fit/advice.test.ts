import { describe, expect, it } from 'vitest';
import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import type { Advice } from '../../src/fit/advice/advice.ts';
import { adviseTube } from '../../src/fit/advice/advise-tube.ts';
import { mixturesOfTube } from '../../src/fit/advice/mixtures-of-a-tube.ts';
import { fitPalette } from '../../src/fit/fit-palette.ts';
import type { PaletteFit } from '../../src/fit/palette-fit.ts';
import { predictWithCovariance } from '../../src/fit/predict.ts';
import { type InventedOptions, inventedSet } from './invented-set.ts';

const TUBE = 'paint-1';
const FEW = { tubes: 2, noise: 0.004 } satisfies InventedOptions;

const meanRadius = (fit: PaletteFit): number => {
  const radii = mixturesOfTube(fit.palette, TUBE).map(
    (masses) => predictWithCovariance(fit.palette, masses).labRegion.radius,
  );
  return radii.reduce((a, b) => a + b, 0) / radii.length;
};

/** The invented set with one measurement really taken. */
const taking = (seed: number, options: InventedOptions, { measurement }: Advice) =>
  inventedSet(seed, {
    ...options,
    ...(measurement.kind === 'repeat' ? { again: [`${TUBE}-masstone`] } : { extra: [measurement.masses] }),
  });

describe('what to measure next', () => {
  it('refuses a tube that is not in the palette', () => {
    const set = inventedSet(1, FEW);
    expect(() => adviseTube(fitPalette(set, { leaveOneOut: false }), set, 'paint-9')).toThrow(
      /no tube "paint-9"/,
    );
  });

  it('says the doubt of now as the prediction itself does, and never expects a measurement to add doubt', () => {
    const set = inventedSet(2, FEW);
    const fit = fitPalette(set, { leaveOneOut: false });
    const advice = adviseTube(fit, set, TUBE);
    expect(advice.map((a) => a.measurement.kind).toSorted()).toEqual(['check', 'drawdown', 'repeat', 'tint']);
    for (const { all, gain, sentence } of advice) {
      expect(all.before).toBeCloseTo(meanRadius(fit), 8);
      expect(gain).toBeGreaterThanOrEqual(0);
      expect(sentence).toMatch(/CIEDE2000\.$/);
    }
    expect(advice.map((a) => a.gain)).toEqual(advice.map((a) => a.gain).toSorted((a, b) => b - a));
  });

  it('names the measurement that really helps most on a ladder half read, and what it brings', () => {
    const half = (set: SwatchSet): SwatchSet => ({
      ...set,
      swatches: set.swatches.filter((s) => s.id !== `${TUBE}-1:4` && s.id !== `${TUBE}-1:16`),
    });
    let [best, worst, foretold] = [0, 0, 0];
    for (const seed of [101, 103, 105, 107]) {
      const set = half(inventedSet(seed, FEW));
      const fit = fitPalette(set, { leaveOneOut: false });
      const advice = adviseTube(fit, set, TUBE);
      const tints = advice.flatMap(({ measurement: { masses } }) =>
        masses['white'] ? [Math.round(masses['white'] / masses[TUBE]!)] : [],
      );
      expect(tints.toSorted((a, b) => a - b)).toEqual([4, 16, 64]);
      const fall = (a: Advice): number => {
        const taken = fitPalette(half(taking(seed, FEW, a)), { leaveOneOut: false, dropWrongRatios: false });
        return meanRadius(fit) - meanRadius(taken);
      };
      const [first, last] = [fall(advice[0]!), fall(advice.at(-1)!)];
      // In each palette by itself, for it is one palette that a painter has.
      expect(first).toBeGreaterThan(1.5 * last);
      best += first;
      worst += last;
      foretold += advice[0]!.gain;
    }
    expect(best).toBeGreaterThan(4 * worst);
    // What was foretold is what came, within a third: sizes of the misfit are estimated anew by each fit.
    expect(foretold / best).toBeGreaterThan(0.67);
    expect(foretold / best).toBeLessThan(1.33);
  });
});
