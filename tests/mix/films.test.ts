import { describe, expect, it } from 'vitest';
import { GRID_SIZE, flatSpectrum } from '../../src/colour/grid.ts';
import { surfaceForward } from '../../src/fit/optics/surface.ts';
import { filmOverNothing } from '../../src/fit/optics/finite-film.ts';
import type { MixingPalette } from '../../src/fit/palette.ts';
import { predictWithCovariance } from '../../src/fit/predict.ts';
import { stackReflectance } from '../../src/mix/film-stack.ts';
import {
  MixProblem,
  contrastRatio,
  filmThickness,
  predictFilms,
  predictMix,
  undertoneToImpasto,
} from '../../src/mix/index.ts';
import { MONTE_CARLO_RELATIVE, PRINTED_8_DECIMALS, SAME_ARITHMETIC } from '../tolerances.ts';
import { inventedPalette } from './invented-palette.ts';

const palette = inventedPalette();

/** One tube of flat K and S. */
function flat(K: number, S: number): MixingPalette {
  return {
    ...palette,
    white: 'x',
    tubes: [
      {
        id: 'x',
        lnK: flatSpectrum(Math.log(K)),
        lnS: flatSpectrum(Math.log(S)),
        own: [],
        shared: [],
      },
    ],
  };
}

describe('films: degenerate ones first', () => {
  it('no film at all is the ground, and a film of no thickness too', () => {
    const ground = { reflectance: flatSpectrum(0.42) };
    for (const films of [[], [{ masses: { 'deep-blue': 1 }, X: 0 }]]) {
      predictFilms(palette, { ground, films }).reflectance.forEach((r) => expect(r).toBeCloseTo(0.42, 12));
    }
  });

  it('a film thick enough is the opaque mix, over anything', () => {
    const masses = { 'warm-red': 1, white: 1 };
    const opaque = predictMix(palette, masses).reflectance;
    for (const g of [0.02, 0.5, 0.9]) {
      const thick = predictFilms(palette, {
        ground: { reflectance: flatSpectrum(g) },
        films: [{ masses, X: 5000 }],
      });
      thick.reflectance.forEach((r, i) => expect(r).toBeCloseTo(opaque[i]!, 10));
    }
  });

  it('a thickness below nothing, or a ground no surface reads, is refused in one sentence', () => {
    const film = { masses: { white: 1 }, X: -1 };
    expect(() => predictFilms(palette, { ground: { paint: { black: 1 } }, films: [film] })).toThrow(
      /cannot be -1 thick/,
    );
    expect(() => predictFilms(palette, { ground: { reflectance: flatSpectrum(1.5) }, films: [] })).toThrow(
      /reading of 1.5/,
    );
    expect(() => filmThickness(50, undefined)).toThrow(/knows no film thickness/);
    expect(() => filmThickness(-5, { value: 0.1, relativeSigma: 0.05 })).toThrow(MixProblem);
    expect(filmThickness(50, { value: 0.1, relativeSigma: 0.05 })).toEqual({ X: 5, sdLnX: 0.05 });
  });
});

describe('check values of the finite film (worked from the formulas, eight decimals; internal, Rg = 0.8)', () => {
  it.each([
    [0.05, 1, 2, 0.75101255],
    [0.2, 1, 1, 0.61848087],
    [0.01, 1, 5, 0.85424601],
    [1, 0.1, 1, 0.13257104],
    [0.5, 2, 0.5, 0.57925288],
  ])('K %f, S %f, X %f gives R %f', (K, S, X, R) => {
    const p = flat(K, S);
    const ground = { reflectance: flatSpectrum(surfaceForward(p.surface, 0.8)) };
    const { internal } = stackReflectance(p, { ground, films: [{ masses: { x: 1 }, X }] });
    expect(Math.abs(internal[7]! - R)).toBeLessThan(PRINTED_8_DECIMALS);
  });
});

describe('a stack of glazes', () => {
  const layers = [
    { masses: { 'yellow-earth': 1, white: 1 }, X: 1.5 },
    { masses: { 'red-lake': 1 }, X: 0.4 },
  ];

  it('has no air between its layers: R = R0 + T^2 Rg/(1 - R0 Rg) through and through (Kubelka 1948)', () => {
    const ground = { reflectance: flatSpectrum(0.3) };
    const below = stackReflectance(palette, { ground, films: [layers[0]!] }).internal;
    const both = stackReflectance(palette, { ground, films: layers }).internal;
    const lake = palette.tubes.find((t) => t.id === 'red-lake')!;
    both.forEach((R, i) => {
      const { R0, T } = filmOverNothing(Math.exp(lake.lnK[i]!), Math.exp(lake.lnS[i]!), 0.4);
      expect(R).toBeCloseTo(R0 + (T * T * below[i]!) / (1 - R0 * below[i]!), 10);
    });
  });

  it('two thin films of one paint are one film of their sum', () => {
    const ground = { paint: { black: 1 } };
    const masses = { 'golden-yellow': 1 };
    const two = predictFilms(palette, {
      ground,
      films: [
        { masses, X: 0.7 },
        { masses, X: 0.3 },
      ],
    }).reflectance;
    const one = predictFilms(palette, { ground, films: [{ masses, X: 1 }] }).reflectance;
    two.forEach((r, i) => expect(Math.abs(r - one[i]!)).toBeLessThan(SAME_ARITHMETIC));
  });

  it('goes from undertone to impasto: each thicker film nearer the opaque mix', () => {
    const way = undertoneToImpasto(
      palette,
      { 'deep-blue': 1, white: 2 },
      { reflectance: flatSpectrum(0.85) },
      [0.1, 0.5, 2, 8],
    );
    const last = way.at(-1)!;
    expect(last.X).toBe('opaque');
    const off = way.map((w) =>
      Math.hypot(w.prediction.lab.L - last.prediction.lab.L, w.prediction.lab.b - last.prediction.lab.b),
    );
    for (let i = 1; i < off.length; i++) expect(off[i]).toBeLessThan(off[i - 1]!);
  });

  it('hides more the thicker it is, and fully in the end', () => {
    const card = { black: flatSpectrum(0.02), white: flatSpectrum(0.85) };
    const ratios = [0.2, 1, 4, 16, 64].map((X) => contrastRatio(palette, { masses: { white: 1 }, X }, card));
    for (let i = 1; i < ratios.length; i++) expect(ratios[i]).toBeGreaterThan(ratios[i - 1]!);
    expect(ratios.at(-1)).toBeGreaterThan(0.98);
  });
});

describe('the interval', () => {
  it("is the fit room's own for an opaque mix and for one film", () => {
    const masses = { 'deep-blue': 1, 'yellow-earth': 2, white: 3 };
    const mine = predictMix(palette, masses).interval;
    const theirs = predictWithCovariance(palette, masses).labRegion;
    expect(mine.radius95).toBeCloseTo(theirs.radius, 8);
    const backing = flatSpectrum(0.8);
    const film = predictFilms(palette, {
      ground: { reflectance: backing },
      films: [{ masses, X: 2, sdLnX: 0.1 }],
    });
    expect(film.interval.radius95).toBeCloseTo(
      predictWithCovariance(palette, masses, { X: 2, backing }, { sdLnX: 0.1 }).labRegion.radius,
      8,
    );
  });

  it('agrees with random draws of the constants, a tube in both layers of a stack moving both', () => {
    const quiet = {
      ...palette,
      discrepancy: { ...palette.discrepancy, sdLnKS: new Float64Array(GRID_SIZE) },
    };
    const stack = {
      ground: { paint: { white: 1, 'dark-earth': 0.2 } },
      films: [{ masses: { 'dark-earth': 1, white: 1 }, X: 1 }],
    };
    const { interval, value } = predictFilms(quiet, stack);
    let seed = 1;
    const uniform = (): number => (seed = (seed * 48271) % 2147483647) / 2147483647;
    const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const draws = Array.from({ length: 4000 }, () => {
      const v = normal();
      const tubes = quiet.tubes.map((t) => {
        const u = t.own.map(normal);
        const off = (k: number): number =>
          t.own.reduce((s, c, j) => s + u[j]! * c[k]!, 0) + v * t.shared[0]![k]!;
        return {
          ...t,
          lnK: t.lnK.map((x, i) => x + off(i)),
          lnS: t.lnS.map((x, i) => x + off(GRID_SIZE + i)),
        };
      });
      return stackReflectance({ ...quiet, tubes }, stack).measured[20]!;
    });
    const mean = draws.reduce((a, b) => a + b, 0) / draws.length;
    const sd = Math.sqrt(draws.reduce((s, d) => s + (d - mean) ** 2, 0) / draws.length);
    const half = (interval.reflectance.high[20]! - interval.reflectance.low[20]!) / 2;
    expect(Math.abs(half / (1.96 * sd) - 1)).toBeLessThan(MONTE_CARLO_RELATIVE);
    expect(interval.value[0]).toBeLessThan(value);
    expect(interval.value[1]).toBeGreaterThan(value);
  });

  it('is stated under any white: the value does not move with the light, the Lab does', () => {
    const masses = { 'warm-red': 1, white: 1 };
    const whites = ['D65/10deg', 'D50/2deg', 'A/10deg', 'LED-B3/2deg'] as const;
    const all = whites.map((w) => predictMix(palette, masses, w));
    all.forEach((p, i) => {
      expect(p.lab.white).toBe(whites[i]);
      expect(p.value).toBeCloseTo(all[0]!.value, 12);
    });
    expect(Math.abs(all[2]!.lab.a - all[0]!.lab.a)).toBeGreaterThan(1);
  });
});
