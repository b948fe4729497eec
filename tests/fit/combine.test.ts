import { describe, expect, it } from 'vitest';
import { GRID_SIZE, flatSpectrum } from '../../src/colour/grid.ts';
import { combineTubes } from '../../src/fit/combine.ts';
import type { TubeConstants } from '../../src/fit/constants.ts';
import { fitPalette } from '../../src/fit/fit-palette.ts';
import { tubeOf } from '../../src/fit/palette.ts';
import { checkProfile } from '../../src/mix/check/check-profile.ts';
import { inventedSet } from './invented-set.ts';

const N = 2 * GRID_SIZE;
/** A tube whose 72 constants have one standard deviation each, independent. */
const plain = (value: number, sd: (i: number) => number): TubeConstants => ({
  id: 'blue',
  lnK: flatSpectrum(value),
  lnS: flatSpectrum(value),
  own: Array.from({ length: N }, (_, i) =>
    Float64Array.from({ length: N }, (__, j) => (i === j ? sd(i) : 0)),
  ),
  shared: [],
});
const variance = (t: TubeConstants, i: number): number =>
  [...t.own, ...t.shared].reduce((sum, c) => sum + c[i]! ** 2, 0);

describe('one tube fitted with two instruments', () => {
  it('refuses constants off the grid', () => {
    const short = { ...plain(0, () => 1), lnS: new Float64Array(3) };
    expect(() =>
      combineTubes(
        plain(0, () => 1),
        short,
      ),
    ).toThrow(/both fits need 36/);
  });

  // The weighted mean of two readings: any textbook on errors of measurement.
  it('takes the mean weighted by 1/variance, each wavelength by itself where they are independent', () => {
    const { constants, widened } = combineTubes(
      plain(0, () => 0.1),
      plain(0.1, (i) => (i === 5 ? 10 : 0.2)),
    );
    expect(widened).toBe(1);
    expect(constants.lnK[0]).toBeCloseTo(0.02, 4);
    expect(variance(constants, 0)).toBeCloseTo(0.008, 4);
    expect(constants.lnK[5]).toBeCloseTo(0, 4);
  });

  it('doubts both more where they disagree by more than their doubt', () => {
    const { constants, widened, disagreement, degrees } = combineTubes(
      plain(0, () => 0.1),
      plain(1, () => 0.1),
    );
    expect(disagreement / degrees).toBeCloseTo(50, 1);
    expect(widened).toBeCloseTo(Math.sqrt(50), 2);
    expect(variance(constants, 0)).toBeCloseTo(0.25, 2);
  });

  it('foretells mixtures of a made palette better than its XYZ fit alone, and stays honest', () => {
    const made = (kind: 'spectral' | 'tristimulus') => inventedSet(41, { tubes: 2, kind });
    const [spectral, xyz] = [made('spectral'), made('tristimulus')].map((set) =>
      fitPalette(set, { leaveOneOut: false, estimate: [] }),
    ) as [ReturnType<typeof fitPalette>, ReturnType<typeof fitPalette>];
    const combined = spectral.palette.tubes.map(
      (tube) => combineTubes(tube, tubeOf(xyz.palette, tube.id)).constants,
    );
    const truth = made('spectral');
    const of = (palette: typeof xyz.palette): ReturnType<typeof checkProfile>['summary'] =>
      checkProfile(palette, truth).summary;
    const both = of({ ...spectral.palette, tubes: combined });
    expect(both.meanDeltaE00).toBeLessThan(of(xyz.palette).meanDeltaE00);
    expect(both.meanDeltaE00).toBeLessThan(1.2 * of(spectral.palette).meanDeltaE00);
    expect(both.inside95Share).toBeGreaterThanOrEqual(0.9);
  });
});
