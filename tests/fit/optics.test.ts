import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { filmFromTwoBackings, filmOverNothing, filmReflectance } from '../../src/fit/optics/finite-film.ts';
import {
  diffuseReflectanceInside,
  diffuseReflectanceOutside,
  fresnelReflectance,
} from '../../src/fit/optics/fresnel.ts';
import {
  kOverS,
  kOverSSlope,
  reflectanceLogSlope,
  reflectanceOfKOverS,
  reflectanceSlope,
} from '../../src/fit/optics/kubelka-munk.ts';
import { readTable } from '../fixtures/read-table.ts';
import {
  PRINTED_6_DECIMALS,
  PRINTED_8_DECIMALS,
  SAME_ARITHMETIC,
  OPTICS_SLOPE_BY_DIFFERENCES,
} from '../tolerances.ts';

describe('the opaque film', () => {
  it.each([0, -0.1, 1.0001, NaN])('refuses an internal reflectance of %f', (R) => {
    expect(() => kOverS(R)).toThrow(/above 0 and at most 1/);
  });

  // 0.5 -> 0.25 and 0.2 -> 1.6 are textbook; the rest follow from the formula.
  it.each([
    [0.01, 49.005],
    [0.02, 24.01],
    [0.05, 9.025],
    [0.1, 4.05],
    [0.2, 1.6],
    [0.25, 1.125],
    [0.5, 0.25],
    [0.8, 0.025],
  ])('has K/S of %f equal to %f', (R, q) => {
    expect(kOverS(R)).toBeCloseTo(q, 10);
  });

  it.each([
    [0.001, 0.95626746],
    [0.01, 0.86822553],
    [0.1, 0.64174243],
    [0.25, 0.5],
    [1, 2 - Math.sqrt(3)],
    [2, 3 - 2 * Math.sqrt(2)],
    [10, 0.04554885],
    [100, 0.00495062],
  ])('has R of %f equal to %f', (q, R) => {
    expect(Math.abs(reflectanceOfKOverS(q) - R)).toBeLessThan(PRINTED_8_DECIMALS);
  });

  it('comes back from K/S and has slopes that are each other’s inverse', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 0.999, noNaN: true }), (R) => {
        expect(Math.abs(reflectanceOfKOverS(kOverS(R)) / R - 1)).toBeLessThan(SAME_ARITHMETIC);
        expect(Math.abs(kOverSSlope(R) * reflectanceSlope(R) - 1)).toBeLessThan(SAME_ARITHMETIC);
        expect(reflectanceLogSlope(R)).toBeCloseTo(reflectanceSlope(R) * kOverS(R), 10);
      }),
    );
  });
});

describe('Fresnel constants', () => {
  it('agree with quadrature at every index of the table', () => {
    const table = readTable('optics/fresnel_saunderson_constants_vs_n.csv');
    expect(table.length).toBeGreaterThan(5);
    for (const row of table) {
      const n = Number(row['n']);
      const agrees = (value: number, name: string): void =>
        expect(Math.abs(value - Number(row[name]))).toBeLessThan(PRINTED_6_DECIMALS);
      agrees(fresnelReflectance(n, 0), 'k1_normal_incidence');
      agrees(fresnelReflectance(n, 8), 'k1_8deg');
      agrees(fresnelReflectance(n, 45), 'k1_45deg');
      agrees(diffuseReflectanceOutside(n), 'k1_diffuse_external');
      agrees(diffuseReflectanceInside(n), 'k2_diffuse_internal');
    }
  });

  it('has F0 of 0.04 exactly at n = 1.5, and the textbook 0.596 inside', () => {
    expect(fresnelReflectance(1.5, 0)).toBeCloseTo(0.04, 12);
    expect(Math.abs(diffuseReflectanceOutside(1.5) - 0.091778)).toBeLessThan(PRINTED_6_DECIMALS);
    expect(Math.abs(diffuseReflectanceInside(1.5) - 0.5963458)).toBeLessThan(PRINTED_6_DECIMALS);
  });

  it('agrees with its own integral of Fresnel’s equations', () => {
    // Midpoint rule over sin^2, 20 000 strips: good to 1e-6 at the grazing end, where the integrand is steep.
    for (const n of [1.33, 1.5, 1.7]) {
      let sum = 0;
      const strips = 20_000;
      for (let k = 0; k < strips; k++) {
        sum += fresnelReflectance(n, (Math.asin(Math.sqrt((k + 0.5) / strips)) * 180) / Math.PI) / strips;
      }
      expect(diffuseReflectanceOutside(n)).toBeCloseTo(sum, 4);
    }
  });
});

describe('the film of finite thickness', () => {
  it('is its backing at no thickness, and the opaque film when thick', () => {
    expect(filmReflectance(0.3, 0.5, 0, 0.8).R).toBeCloseTo(0.8, 12);
    expect(filmReflectance(0.3, 0.5, 1e4, 0.8).R).toBeCloseTo(reflectanceOfKOverS(0.6), 12);
  });

  it('takes K = 0: SX = 2 gives 2/3 over black and 6/7 over 0.8', () => {
    expect(filmReflectance(0, 1, 2, 0).R).toBeCloseTo(2 / 3, 12);
    expect(filmReflectance(0, 1, 2, 0.8).R).toBeCloseTo(6 / 7, 12);
  });

  it.each([
    [0.05, 1, 2, 0.61860685, 0.75101255, 0.28913674],
    [0.2, 1, 1, 0.42688758, 0.61848087, 0.39711814],
    [0.01, 1, 5, 0.80487504, 0.85424601, 0.14824389],
    [1, 0.1, 1, 0.04046509, 0.13257104, 0.3337744],
    [0.5, 2, 0.5, 0.4113829, 0.57925288, 0.37520479],
  ])('K %f S %f X %f', (K, S, X, R0, R, T) => {
    const nothing = filmOverNothing(K, S, X);
    expect(Math.abs(nothing.R0 - R0)).toBeLessThan(PRINTED_8_DECIMALS);
    expect(Math.abs(nothing.T - T)).toBeLessThan(PRINTED_8_DECIMALS);
    const over = filmReflectance(K, S, X, 0.8).R;
    expect(Math.abs(over - R)).toBeLessThan(PRINTED_8_DECIMALS);
    // Stacking layers is the other route.
    expect(over).toBeCloseTo(nothing.R0 + (nothing.T ** 2 * 0.8) / (1 - nothing.R0 * 0.8), 12);
  });

  it('has slopes that agree with differences, thin, thick, clear and dark', () => {
    const positive = (min: number, max: number): fc.Arbitrary<number> =>
      fc.double({ min: Math.log(min), max: Math.log(max), noNaN: true }).map(Math.exp);
    fc.assert(
      fc.property(
        positive(1e-5, 30),
        positive(1e-3, 3),
        positive(0.01, 30),
        fc.double({ min: 0.01, max: 0.95, noNaN: true }),
        (K, S, X, Rg) => {
          const at = filmReflectance(K, S, X, Rg);
          const h = 1e-6;
          const by = (f: (d: number) => number): number => (f(h) - f(-h)) / (2 * h);
          const R = (k: number, s: number, x: number, g: number): number => filmReflectance(k, s, x, g).R;
          expect(Math.abs(by((d) => R(K * (1 + d), S, X, Rg)) - at.dK * K)).toBeLessThan(
            OPTICS_SLOPE_BY_DIFFERENCES,
          );
          expect(Math.abs(by((d) => R(K, S * (1 + d), X, Rg)) - at.dS * S)).toBeLessThan(
            OPTICS_SLOPE_BY_DIFFERENCES,
          );
          expect(Math.abs(by((d) => R(K, S, X * (1 + d), Rg)) - at.dLnX)).toBeLessThan(
            OPTICS_SLOPE_BY_DIFFERENCES,
          );
          expect(Math.abs(by((d) => R(K, S, X, Rg + d)) - at.dRg)).toBeLessThan(OPTICS_SLOPE_BY_DIFFERENCES);
        },
      ),
    );
  });

  it('is found again from two backings', () => {
    const found = filmFromTwoBackings({
      black: { Rg: 0.02, R: 0.43006879 },
      white: { Rg: 0.85, R: 0.63727497 },
    });
    expect(found.a).toBeCloseTo(1.2, 6);
    expect(found.SX).toBeCloseTo(1, 6);
    expect(found.KX).toBeCloseTo(0.2, 6);
  });

  it('refuses a pair of readings that hide', () => {
    expect(() => filmFromTwoBackings({ black: { Rg: 0.02, R: 0.5 }, white: { Rg: 0.85, R: 0.5 } })).toThrow(
      /only K\/S can be known/,
    );
  });
});
