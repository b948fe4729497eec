import { describe, expect, it } from 'vitest';
import { GRID_NM, GRID_SIZE, flatSpectrum } from '../../src/colour/grid.ts';
import { ciede2000 } from '../../src/colour/ciede2000.ts';
import { labOfReflectance } from '../../src/colour/lab.ts';
import { tristimulusWeights } from '../../src/colour/tristimulus.ts';
import { xyzOf } from '../../src/colour/xyz.ts';
import { matchColour, metamerism, metamerismIndex, predictMix } from '../../src/mix/index.ts';
import { METAMERISM_OWN_WEIGHTS, SAME_ARITHMETIC } from '../tolerances.ts';
import { inventedPalette } from './invented-palette.ts';

/** On 400-700 nm as the check values are; the ends of the grid repeat, which is where E308 folds their weights. */
const at400to700 = (f: (nm: number) => number): Float64Array =>
  Float64Array.from(GRID_NM, (nm) => f(Math.min(700, Math.max(400, nm))));
const g = (centre: number, nm: number): number => Math.exp(-0.5 * ((nm - centre) / 25) ** 2);
const R1 = at400to700(() => 0.3);
const R2 = at400to700(
  (nm) =>
    0.3 - 0.03570414 * g(440, nm) + 0.1 * g(500, nm) - 0.09338104 * g(560, nm) + 0.08459294 * g(620, nm),
);

describe('a pair that does not differ', () => {
  it('has no metamerism, and neither has a pair that differs by a factor', () => {
    for (const factor of [1, 0.97]) {
      for (const m of metamerism(
        R2,
        R2.map((r) => r * factor),
      ))
        expect(m.deltaE00).toBeLessThan(SAME_ARITHMETIC * 1e4);
    }
  });

  it('a sample that reflects nothing is refused in one sentence', () => {
    expect(() => metamerism(R1, flatSpectrum(0))).toThrow(/reflects nothing has no metamerism/);
  });
});

describe('check values (worked from the formulas; D65 to A, 10 degrees)', () => {
  it('the pair matches under D65: both near 28.443, 30.000, 32.191', () => {
    for (const R of [R1, R2]) {
      const { X, Y, Z } = xyzOf(R, tristimulusWeights('D65/10deg'));
      expect(Math.abs(X - 28.443)).toBeLessThan(METAMERISM_OWN_WEIGHTS);
      expect(Math.abs(Y - 30)).toBeLessThan(METAMERISM_OWN_WEIGHTS);
      expect(Math.abs(Z - 32.191)).toBeLessThan(METAMERISM_OWN_WEIGHTS);
    }
  });

  it('and differs under A: dE*ab 5.02, CIEDE2000 6.33', () => {
    const { deltaEab, deltaE00 } = metamerismIndex(R1, R2, 'A');
    expect(Math.abs(deltaEab - 5.02)).toBeLessThan(METAMERISM_OWN_WEIGHTS);
    expect(Math.abs(deltaE00 - 6.33)).toBeLessThan(METAMERISM_OWN_WEIGHTS);
    const a = tristimulusWeights('A/10deg');
    expect(ciede2000(labOfReflectance(R1, a), labOfReflectance(R2, a))).toBeCloseTo(deltaE00, 1);
  });

  it('a sample scaled by 0.97 returns 5.02 after the multiplicative correction', () => {
    const { deltaEab } = metamerismIndex(
      R1,
      R2.map((r) => 0.97 * r),
      'A',
    );
    expect(Math.abs(deltaEab - 5.02)).toBeLessThan(METAMERISM_OWN_WEIGHTS);
  });
});

it('a recipe has an index only where its target is a spectrum', () => {
  const palette = inventedPalette();
  const target = predictMix(palette, { white: 2, 'deep-blue': 1, 'warm-red': 0.2 });
  expect(target.reflectance).toHaveLength(GRID_SIZE);
  expect(matchColour(palette, { lab: target.lab }).recipes[0]!.metamerism).toBeUndefined();
  const indices = matchColour(palette, { spectrum: target.reflectance }).recipes[0]!.metamerism!;
  expect(indices.map((m) => m.illuminant)).toEqual(['A', 'LED-B3']);
});
