import { describe, expect, it } from 'vitest';
import { GRID_SIZE, flatSpectrum } from '../../src/colour/grid.ts';
import { combineTubes } from '../../src/fit/combine.ts';
import type { TubeConstants } from '../../src/fit/constants.ts';

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

  it('gives a doubt that both share no less weight for being told twice', () => {
    const common = new Float64Array(N).fill(0.3);
    const sharing = (value: number): TubeConstants => ({ ...plain(value, () => 0.1), shared: [common] });
    const { constants, widened } = combineTubes(sharing(0), sharing(0.1));
    expect(widened).toBe(1);
    expect(constants.lnK[0]).toBeCloseTo(0.05, 4);
    expect(variance(constants, 0)).toBeCloseTo(0.005 + 0.09, 4);
  });

  it('takes a prior that both rest on once', () => {
    // Two readings of variance 1 under a prior of variance 1 leave 1/2 each, of which 1/4 is common: as one they leave
    // (1/2 + 1/4)/2, not the 1/4 of two that have nothing in common.
    const prior = new Float64Array(N * N);
    for (let i = 0; i < N; i++) prior[i * N + i] = 1;
    const half = (value: number): TubeConstants => plain(value, () => Math.sqrt(0.5));
    const { constants } = combineTubes(half(0.2), half(0.2), prior);
    expect(variance(constants, 0)).toBeCloseTo(3 / 8, 4);
    expect(constants.lnK[0]).toBeCloseTo(0.2, 6);
  });
});
