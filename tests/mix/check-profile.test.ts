import { describe, expect, it } from 'vitest';
import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { GRID_NM, GRID_SIZE, flatSpectrum } from '../../src/colour/grid.ts';
import { surfaceFor } from '../../src/fit/optics/surface.ts';
import type { MixingPalette } from '../../src/fit/palette.ts';
import { predictReflectance } from '../../src/fit/predict.ts';
import { checkProfile } from '../../src/mix/check/check-profile.ts';

const palette: MixingPalette = {
  tubes: [
    { id: 'white', lnK: flatSpectrum(Math.log(0.004)), lnS: flatSpectrum(0), own: [], shared: [] },
    { id: 'blue', lnK: flatSpectrum(0), lnS: flatSpectrum(-2), own: [], shared: [] },
  ],
  white: 'white',
  geometry: '45/0',
  surface: surfaceFor('45/0'),
  discrepancy: { sdLnKS: flatSpectrum(0.02), correlationNm: 60 },
};

function setOf(checks: SwatchSet['checks'], geometry: '45/0' | 'd/8 specular included' = '45/0'): SwatchSet {
  return {
    format: 'swatch-set',
    version: 1,
    instrument: { kind: 'spectral', geometry, wavelengths: [...GRID_NM] },
    noise: { sigma: 0.001 },
    backings: [
      { id: 'black', reflectance: Array.from({ length: GRID_SIZE }, () => 0.05) },
      { id: 'card', reflectance: Array.from({ length: GRID_SIZE }, () => 0.8) },
    ],
    tubes: [{ id: 'white', role: 'white' }, { id: 'blue' }],
    swatches: [],
    checks,
  };
}

const masses = { blue: 1, white: 9 };

describe('checkProfile', () => {
  it('refuses a document without checks, another geometry, and a tube it does not know', () => {
    expect(() => checkProfile(palette, setOf([]))).toThrow(/holds no checks/);
    const truth = [...flatSpectrum(0.3)];
    const check = { id: 'a', masses, film: 'opaque' as const, truth };
    expect(() => checkProfile(palette, setOf([check], 'd/8 specular included'))).toThrow(
      /different|surfaces/,
    );
    const other = { ...palette, tubes: palette.tubes.slice(0, 1) };
    expect(() => checkProfile(other, setOf([check]))).toThrow(/no tube "blue"/);
  });

  it('finds no difference where the truth is the prediction, and tells a far truth from a near one', () => {
    const truth = [...predictReflectance(palette, masses).measured];
    const near = { id: 'near', masses, film: 'opaque' as const, truth };
    const far = { ...near, id: 'far', truth: truth.map((v) => v * 1.5) };
    const { checks, summary } = checkProfile(palette, setOf([near, far]));
    expect(checks[0]).toMatchObject({ id: 'near', inside95: true });
    expect(checks[0]!.deltaE00).toBeLessThan(1e-9);
    expect(checks[1]!.inside95).toBe(false);
    expect(summary).toMatchObject({ count: 2, inside95Share: 0.5 });
  });

  it('finds one thickness for a film over two cards from that film alone', () => {
    const X = 1.7;
    const over = (backing: number): number[] => [
      ...predictReflectance(palette, masses, { X, backing: flatSpectrum(backing) }).measured,
    ];
    const film = { thickness: null, drawdown: 'd' };
    const { checks } = checkProfile(
      palette,
      setOf([
        { id: 'over-black', masses, film, backing: 'black', truth: over(0.05) },
        { id: 'over-white', masses, film, backing: 'card', truth: over(0.8) },
      ]),
    );
    for (const check of checks) {
      expect(Math.abs(check.thickness! / X - 1)).toBeLessThan(0.005);
      expect(check.deltaE00).toBeLessThan(0.05);
    }
  });

  it('compares readings with their noise counted', () => {
    const exact = [...predictReflectance(palette, masses).measured];
    const readings = [exact.map((v, i) => v + (i % 2 ? 0.001 : -0.001))];
    const { checks } = checkProfile(palette, setOf([{ id: 'read', masses, film: 'opaque', readings }]));
    expect(checks[0]!.inside95).toBe(true);
  });
});
