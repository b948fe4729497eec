import { describe, expect, it } from 'vitest';
import { fitPalette } from '../../src/fit/fit-palette.ts';
import { doubtSources } from '../../src/fit/evidence/doubt-sources.ts';
import type { MixingPalette } from '../../src/fit/palette.ts';
import { inventedSet } from './invented-set.ts';

const { palette } = fitPalette(inventedSet(2, { tubes: 2, noise: 0.004 }), { leaveOneOut: false });
const TUBE = 'paint-1';

/** The palette with some of its doubt taken away. */
const surer = (change: (tube: MixingPalette['tubes'][number]) => object): MixingPalette => ({
  ...palette,
  tubes: palette.tubes.map((tube) => ({ ...tube, ...change(tube) })),
});

describe('what the doubt of a tube comes from', () => {
  it('refuses a tube that is not in the palette', () => {
    expect(() => doubtSources(palette, 'paint-9')).toThrow(/no tube "paint-9"/);
  });

  it('is shares of a whole, the greatest named in words', () => {
    const { shares, dominant, words, radius, darks, lights } = doubtSources(palette, TUBE);
    const all = Object.values(shares);
    expect(all.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    expect(shares[dominant]).toBe(Math.max(...all));
    expect(words).toMatch(/^Mixtures with it hold within \d+\.\d CIEDE2000.*\d+ % of the doubt comes from /);
    expect(radius).toBeLessThan(Math.max(darks ?? 0, lights ?? 0, radius) + 1e-9);
  });

  it('has none from what is known for sure, and all from what alone is doubtful', () => {
    const sureOfTube = surer((tube) => (tube.id === TUBE ? { own: [] } : {}));
    expect(doubtSources(sureOfTube, TUBE).shares.own).toBe(0);
    const onlyShared = surer(() => ({ own: [] }));
    const none = {
      ...onlyShared,
      discrepancy: { ...palette.discrepancy, sdLnKS: new Float64Array(36), sdHaze: 0 },
    };
    expect(doubtSources(none, TUBE).shares.shared).toBeCloseTo(1, 12);
  });

  it('falls in the radius by about what a source had of the square', () => {
    const before = doubtSources(palette, TUBE);
    const after = doubtSources(
      surer((tube) => (tube.id === TUBE ? { own: [] } : {})),
      TUBE,
    );
    const fell = 1 - (after.radius / before.radius) ** 2;
    // The mean of radii is not the root of the mean square, and the radius counts degrees of freedom.
    expect(Math.abs(fell - before.shares.own)).toBeLessThan(0.15);
  });
});
