import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GEOMETRIES } from '../../src/calibrate/swatch-set/schema.ts';
import { tabledReflectance } from '../../src/device/practice/transfer/albedo-table.ts';
import { kOverS } from '../../src/fit/optics/kubelka-munk.ts';
import {
  type Surface,
  surfaceFloor,
  surfaceFor,
  surfaceForward,
  surfaceInverse,
  surfaceSlope,
  topOf,
  topSlopeByK2,
  transportSurfaceFor,
} from '../../src/fit/optics/surface.ts';
import {
  PRINTED_8_DECIMALS,
  SAME_ARITHMETIC,
  OPTICS_SLOPE_BY_DIFFERENCES,
  SURFACE_AGAINST_TRANSFER,
  TOP_BY_A_LINE,
} from '../tolerances.ts';

/** The printed check values use k1 0.04 and k2 0.6 for the first two forms. */
const included: Surface = { form: 'specular-included', refractiveIndex: 1.5, k1: 0.04, k2: 0.6, haze: 0 };
const excluded: Surface = { ...included, form: 'specular-excluded' };
const at45 = surfaceFor('45/0');

describe('the surface', () => {
  it('refuses a reading that no film can give, and clips nothing', () => {
    expect(() => surfaceInverse(included, 0.04)).toThrow(/0\.0400/);
    expect(() => surfaceInverse(included, 0.03)).toThrow(/no internal reflectance/);
    expect(() => surfaceInverse(excluded, 0.97)).toThrow(/0\.9600/);
    expect(() => surfaceInverse(at45, NaN)).toThrow(RangeError);
  });

  // R = 1 at 45/0 reads 1.0039: reflectance factors a little over 1 are legitimate.
  it.each([
    [0.05, 0.02564103, 0.12077295, 0.11492978],
    [0.1, 0.14285714, 0.22522523, 0.21511596],
    [0.2, 0.33333333, 0.3968254, 0.38131545],
    [0.5, 0.6969697, 0.73099415, 0.7108292],
    [0.8, 0.9047619, 0.92592593, 0.90671328],
    [0.9, 0.95555556, 0.97402597, 0.95547269],
  ])('takes a reading of %f inside (Saunderson 1942 and its 45/0 form)', (Rm, a, b, c) => {
    expect(Math.abs(surfaceInverse(included, Rm) - a)).toBeLessThan(PRINTED_8_DECIMALS);
    expect(Math.abs(surfaceInverse(excluded, Rm) - b)).toBeLessThan(PRINTED_8_DECIMALS);
    expect(Math.abs(surfaceInverse(at45, Rm) - c)).toBeLessThan(PRINTED_8_DECIMALS);
  });

  it('reads R = 0.5 and R = 1 as printed', () => {
    const both = [included, excluded, at45].map((s) => [surfaceForward(s, 0.5), surfaceForward(s, 1)]);
    const printed = [
      [0.314286, 1],
      [0.274286, 0.96],
      [0.288697, 1.003906],
    ];
    both.forEach((pair, i) => pair.forEach((v, j) => expect(v).toBeCloseTo(printed[i]![j]!, 6)));
  });

  it('comes back, rises, and has the slope it says, for every geometry', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...GEOMETRIES),
        fc.double({ min: 1.3, max: 1.7, noNaN: true }),
        fc.double({ min: 1e-4, max: 1, noNaN: true }),
        (geometry, n, R) => {
          for (const surface of [
            surfaceFor(geometry, { refractiveIndex: n }),
            transportSurfaceFor(geometry, { refractiveIndex: n }),
          ]) {
            expect(Math.abs(surfaceInverse(surface, surfaceForward(surface, R)) - R)).toBeLessThan(
              SAME_ARITHMETIC,
            );
            const h = 1e-6;
            const slope = (surfaceForward(surface, R + h) - surfaceForward(surface, R - h)) / (2 * h);
            expect(Math.abs(slope - surfaceSlope(surface, R))).toBeLessThan(OPTICS_SLOPE_BY_DIFFERENCES);
            expect(slope).toBeGreaterThan(0);
          }
        },
      ),
    );
  });
});

describe('the surface that stands in for radiative transfer', () => {
  // Exact half-space under a Fresnel boundary (Chandrasekhar's H-functions); nothing of Kubelka-Munk's is in it.
  const absorptions = Array.from({ length: 19 }, (_, i) => Math.exp(-7 + 0.5 * i));
  const spread = (surface: Surface, n: number, geometry: (typeof GEOMETRIES)[number]): number => {
    const logs = absorptions.map((x) => {
      const y = tabledReflectance(1 / (1 + x), n, geometry) - surfaceFloor(surface);
      const gain = surfaceForward(surface, 1) - surfaceFloor(surface);
      const R = y / (gain * (1 - surface.k2) + surface.k2 * y);
      return Math.log(kOverS(R) / x);
    });
    return (Math.max(...logs) - Math.min(...logs)) / 2;
  };

  it.each([1.4, 1.45, 1.5, 1.55, 1.6])('keeps K/S in proportion to absorption at n = %f', (n) => {
    for (const geometry of GEOMETRIES) {
      expect(spread(transportSurfaceFor(geometry, { refractiveIndex: n }), n, geometry)).toBeLessThan(
        SURFACE_AGAINST_TRANSFER,
      );
    }
  });

  it('has a top that follows k2 in a straight line from index 1.4 to 1.6', () => {
    for (const geometry of GEOMETRIES) {
      const middle = transportSurfaceFor(geometry);
      for (const refractiveIndex of [1.4, 1.45, 1.55, 1.6]) {
        const surface = transportSurfaceFor(geometry, { refractiveIndex });
        const line = topOf(middle) + topSlopeByK2(geometry) * (surface.k2 - middle.k2);
        expect(Math.abs(topOf(surface) - line)).toBeLessThan(TOP_BY_A_LINE);
      }
    }
  });

  it('does so six times better than the perfectly diffuse k2', () => {
    const diffuse = spread(surfaceFor('45/0'), 1.5, '45/0');
    expect(diffuse / spread(transportSurfaceFor('45/0'), 1.5, '45/0')).toBeGreaterThan(6);
  });
});
