import { describe, expect, it } from 'vitest';
import { flatSpectrum } from '../../src/colour/grid.ts';
import type { TubeConstants } from '../../src/fit/constants.ts';
import { contrastAtThickness, contrastRatio } from '../../src/fit/film-facts/contrast-ratio.ts';
import { fullHiding, fullHidingRatio } from '../../src/fit/film-facts/full-hiding.ts';
import { absoluteScattering, unitsPerMicrometre } from '../../src/fit/film-facts/scattering.ts';
import { tubeFilm } from '../../src/fit/film-facts/tube-film.ts';
import { undertone } from '../../src/fit/film-facts/undertone.ts';
import { kOverS } from '../../src/fit/optics/kubelka-munk.ts';
import { transportSurfaceFor } from '../../src/fit/optics/surface.ts';
import type { MixingPalette } from '../../src/fit/palette.ts';
import { halfStrength, strengthPercent, strengthPercentOf, tintingStrength } from '../../src/fit/strength.ts';
import { randomFrom } from './invented-set.ts';

/** Doubt of one number, all wavelengths together, in ln K and ln S. */
const column = (k: number, s: number): Float64Array =>
  Float64Array.from({ length: 72 }, (_, i) => (i < 36 ? k : s));
const tube = (id: string, K: number, S: number, own: Float64Array[] = []): TubeConstants => ({
  id,
  lnK: flatSpectrum(Math.log(K)),
  lnS: flatSpectrum(Math.log(S)),
  own,
  shared: [],
});
const paletteOf = (...tubes: TubeConstants[]): MixingPalette => missing(0.01, ...tubes);
/** `sd`: what the equations miss of each film, in ln(K/S). */
const missing = (sd: number, ...tubes: TubeConstants[]): MixingPalette => ({
  tubes: [tube('white', 0.002, 1), ...tubes],
  white: 'white',
  geometry: '45/0',
  surface: transportSurfaceFor('45/0'),
  discrepancy: { sdLnKS: flatSpectrum(sd), correlationNm: 60 },
});

describe('tinting strength', () => {
  it('refuses the white as a paint of its own tints, and a reference that does not tint', () => {
    const palette = paletteOf(tube('blue', 2, 0.05));
    expect(() => tintingStrength(palette, 'white', 'blue')).toThrow(/white of the tints/);
    expect(() => strengthPercentOf(1, 0.1, 0.1)).toThrow(/absorbs no more than the white/);
  });

  // Worked example after ASTM D4838: tints of R 0.40 (reference) and 0.36 (test), white 0.90; 126.75 %, 126.42 % of
  // it where the white is not taken off.
  it('is 126.75 % in the worked example', () => {
    expect(strengthPercentOf(kOverS(0.36), kOverS(0.4), kOverS(0.9))).toBeCloseTo(126.75, 2);
    expect(strengthPercentOf(kOverS(0.36), kOverS(0.4), 0)).toBeCloseTo(126.42, 2);
  });

  it('of a tube twice as absorbing is 200 % when it scatters the same, and the tubes of one doubt have one', () => {
    const sure = missing(0, tube('blue', 2, 0.05), tube('double', 4, 0.05));
    expect(tintingStrength(sure, 'blue', 'double')).toEqual({
      value: tintingStrength(sure, 'blue', 'double').value,
      sd: 0,
    });
    expect(tintingStrength(sure, 'blue', 'double').value).toBeCloseTo(200, 0);
    const doubtful = paletteOf(
      tube('blue', 2, 0.05, [column(0.03, 0)]),
      tube('double', 4, 0.05, [column(0.04, 0)]),
    );
    // Independent 3 % and 4 %: 5 % together, of 200.
    expect(tintingStrength(doubtful, 'blue', 'double').sd).toBeCloseTo(10, 0);
  });

  it('has a half-strength ratio where the tint is midway in lightness, more of it for a stronger paint', () => {
    const weak = halfStrength(paletteOf(tube('blue', 1, 0.05, [column(0.05, 0)])), 'blue');
    const strong = halfStrength(paletteOf(tube('blue', 4, 0.05, [column(0.05, 0)])), 'blue');
    expect(strong.parts).toBeGreaterThan(weak.parts);
    expect(weak.low).toBeLessThan(weak.parts);
    expect(weak.high).toBeGreaterThan(weak.parts);
    expect(() => halfStrength(paletteOf(tube('pale', 0.002, 1)), 'pale')).toThrow(/as light as the white/);
  });
});

describe('films', () => {
  it('have a contrast ratio that grows with thickness, and 0.98 at the thickness for full hiding', () => {
    const palette = paletteOf(tube('red', 0.3, 0.7));
    expect(contrastRatio(palette, 'red', 0.5)).toBeLessThan(contrastRatio(palette, 'red', 2));
    expect(contrastRatio(palette, 'red', fullHiding(palette, 'red').X)).toBeCloseTo(0.98, 9);
    expect(() => contrastAtThickness(palette, 'red', { X: 0 })).toThrow(/thicker than 0/);
  });

  it('say which standards reach the paint', () => {
    const palette = paletteOf(tube('dark', 20, 0.1), tube('middle', 0.4, 0.4));
    expect(contrastAtThickness(palette, 'white', { X: 3 }).scope).toMatchObject({
      iso6504: true,
      astmD2805: true,
    });
    expect(contrastAtThickness(palette, 'middle', { X: 3 }).scope).toMatchObject({
      iso6504: false,
      astmD2805: true,
    });
    expect(contrastAtThickness(palette, 'dark', { X: 3 }).scope.words).toMatch(/informative only/);
  });

  it('carry the doubt in scattering per micrometre, and none is taken where it is known', () => {
    const palette = paletteOf(tube('red', 0.3, 0.7));
    const per = { value: 0.05, relativeSigma: 0.2 };
    const um = contrastAtThickness(palette, 'red', { micrometres: 40, perMicrometre: per });
    const x = contrastAtThickness(palette, 'red', { X: 2 });
    const sure = contrastAtThickness(missing(0, tube('red', 0.3, 0.7)), 'red', { X: 2 });
    expect(um.value).toBeCloseTo(x.value, 12);
    expect(sure.high - sure.low).toBeLessThan(1e-9);
    // What the equations miss of the film itself is in it, and little beside a fifth of the thickness.
    expect(x.high - x.low).toBeGreaterThan(1e-4);
    expect(x.high - x.low).toBeLessThan((um.high - um.low) / 10);
    expect(um.low).toBeLessThan(um.value);
    expect(um.high).toBeLessThan(1);
    expect(undertone(palette, 'red', { micrometres: 10, perMicrometre: per }).radius).toBeGreaterThan(
      undertone(palette, 'red', { X: 0.5 }).radius,
    );
  });

  it('hold the truth 95 times in 100: contrast, full hiding and half strength of 200 drawn tubes', () => {
    const own = [column(0.1, 0.02), column(0, 0.15)];
    const { normal } = randomFrom(77);
    const fitted = paletteOf(tube('red', 0.3, 0.7, own));
    const contrast = contrastAtThickness(fitted, 'red', { X: 1.5 });
    const hiding = fullHiding(fitted, 'red');
    const half = halfStrength(fitted, 'red');
    const inside = [0, 0, 0];
    for (let draw = 0; draw < 200; draw++) {
      const z = [normal(), normal()];
      const move = (at: number): number => own.reduce((sum, c, k) => sum + z[k]! * c[at]!, 0);
      const truth = paletteOf(tube('red', 0.3 * Math.exp(move(0)), 0.7 * Math.exp(move(36))));
      const seen = [
        [contrastRatio(truth, 'red', 1.5), contrast],
        [fullHiding(truth, 'red').X, hiding],
        [halfStrength(truth, 'red').parts, half],
      ] as const;
      seen.forEach(([v, { low, high }], k) => (inside[k]! += v >= low && v <= high ? 1 : 0));
    }
    // 200 draws of 0.95: standard deviation 1.5 %.
    for (const n of inside) {
      expect(n / 200).toBeGreaterThan(0.9);
      expect(n / 200).toBeLessThan(0.995);
    }
  });

  it('over a card that no geometry reads darker than its own surface', () => {
    const palette = {
      ...paletteOf(tube('red', 0.3, 0.7)),
      geometry: 'd/8 specular included' as const,
      surface: transportSurfaceFor('d/8 specular included'),
    };
    const { low, value, high } = contrastAtThickness(palette, 'red', { X: 1.5 });
    expect(low).toBeLessThan(value);
    expect(high).toBeGreaterThan(value);
  });

  it('of the same tube hide alike, whatever the doubt', () => {
    const palette = paletteOf(tube('red', 0.3, 0.7, [column(0.1, 0.1)]));
    expect(fullHidingRatio(palette, 'red', 'red')).toEqual({ value: 1, sd: 0 });
  });
});

describe('films in micrometres', () => {
  const palette = paletteOf(tube('red', 0.3, 0.7, [column(0.1, 0.15)]));
  const white = { id: 'white', density: 2 };
  const per = { value: 0.05, relativeSigma: 0.1 };

  it('are not told where no thickness was given, and default to a usual film there', () => {
    const red = { id: 'red', density: 1 };
    expect(() => tubeFilm(palette, red, white, { at: { micrometres: 50 } })).toThrow(/known thickness/);
    const film = tubeFilm(palette, red, white);
    expect(film.contrast).toMatchObject({ X: 2, micrometres: null });
    expect(film.scattering).toBeNull();
    expect(film.fullHiding.micrometres).toBeNull();
  });

  it('hold as much paint as their density says: half as dense, twice as thick for the same hiding', () => {
    const at = (density: number) =>
      tubeFilm(palette, { id: 'red', density }, white, { perMicrometre: per }).fullHiding.micrometres!.value;
    expect(at(1) / at(2)).toBeCloseTo(2, 9);
    // A density taken from the pigments is doubtful itself.
    const guessed = unitsPerMicrometre(per, { id: 'red', pigments: ['PR108'] }, white);
    expect(guessed.relativeSigma).toBeGreaterThan(per.relativeSigma);
    expect(unitsPerMicrometre(per, { id: 'red', density: 1 }, white).relativeSigma).toBe(per.relativeSigma);
  });

  it('scatter per micrometre what sampling the constants and the thickness gives, 95 times in 100', () => {
    const told = absoluteScattering(palette, 'red', per);
    const { normal } = randomFrom(78);
    let inside = 0;
    for (let draw = 0; draw < 400; draw++) {
      const truth = 0.7 * Math.exp(0.15 * normal()) * per.value * Math.exp(per.relativeSigma * normal());
      inside += truth >= told.low[17]! && truth <= told.high[17]! ? 1 : 0;
    }
    expect(told.value[17]).toBeCloseTo(0.7 * per.value, 12);
    // 400 draws of 0.95: standard deviation 1.1 %.
    expect(inside / 400).toBeGreaterThan(0.915);
    expect(inside / 400).toBeLessThan(0.985);
  });

  it('give an interval for strength that sampling agrees with, above zero however doubtful', () => {
    const pair = missing(
      0,
      tube('blue', 2, 0.05, [column(0.2, 0)]),
      tube('other', 1, 0.05, [column(0.1, 0)]),
    );
    const { low, value, high } = strengthPercent(pair, 'other', 'blue');
    const { normal } = randomFrom(79);
    let inside = 0;
    for (let draw = 0; draw < 400; draw++) {
      const truth = missing(
        0,
        tube('blue', 2 * Math.exp(0.2 * normal()), 0.05),
        tube('other', Math.exp(0.1 * normal()), 0.05),
      );
      const v = tintingStrength(truth, 'other', 'blue').value;
      inside += v >= low && v <= high ? 1 : 0;
    }
    expect(low).toBeGreaterThan(0);
    expect(high).toBeGreaterThan(value);
    expect(inside / 400).toBeGreaterThan(0.915);
    expect(inside / 400).toBeLessThan(0.985);
  });
});
