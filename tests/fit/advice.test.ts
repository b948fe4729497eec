import { describe, expect, it } from 'vitest';
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

  it('ranks as refitting after each measurement does, on average over eight invented palettes', () => {
    let [best, worst, foretold] = [0, 0, 0];
    for (let seed = 101; seed <= 108; seed++) {
      const set = inventedSet(seed, FEW);
      const fit = fitPalette(set, { leaveOneOut: false });
      const advice = adviseTube(fit, set, TUBE);
      const after = (a: Advice): number =>
        meanRadius(fitPalette(taking(seed, FEW, a), { leaveOneOut: false, dropWrongRatios: false }));
      const b = after(advice[0]!);
      const w = after(advice.at(-1)!);
      best += meanRadius(fit) - b;
      worst += meanRadius(fit) - w;
      foretold += advice[0]!.gain;
    }
    expect(best).toBeGreaterThan(worst);
    // What was foretold is what came, within half: sizes of the misfit are estimated anew by each fit.
    expect(foretold / best).toBeGreaterThan(0.5);
    expect(foretold / best).toBeLessThan(1.5);
  });
});
