/** Sources: ISO/CIE 11664-4 (exact definition of f); culori as a second implementation; finite differences. */
import { converter } from 'culori';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adaptLab } from '../../src/colour/adaptation.ts';
import { displayColour } from '../../src/colour/display.ts';
import { GRID_SIZE, flatSpectrum } from '../../src/colour/grid.ts';
import {
  type Lab,
  chroma,
  hueDegrees,
  labF,
  labJacobian,
  labOf,
  labOfReflectance,
  xyzFromLab,
} from '../../src/colour/lab.ts';
import { lean, leanWord } from '../../src/colour/lean.ts';
import { tristimulusWeights } from '../../src/colour/tristimulus.ts';
import { whitePoint } from '../../src/colour/white-point.ts';
import { ADAPTATION_ROUND_TRIP, OTHER_LIBRARY_DISPLAY, SAME_ARITHMETIC } from '../tolerances.ts';

const weights = tristimulusWeights('D65/10deg');

describe('CIELAB', () => {
  it('puts black at L* 0 and the perfect diffuser at L* 100, both neutral', () => {
    const black = labOfReflectance(flatSpectrum(0), weights);
    expect(black.L).toBeCloseTo(0, 12);
    expect(chroma(black)).toBeCloseTo(0, 12);
    const white = labOf(whitePoint('D65/10deg'));
    expect(white.L).toBeCloseTo(100, 10);
    expect(chroma(white)).toBeCloseTo(0, 10);
  });

  it('joins its two parts at (6/29)^3 without a step', () => {
    const t = (6 / 29) ** 3;
    expect(labF(t * (1 + 1e-12))).toBeCloseTo(labF(t), 12);
    expect(labF(t)).toBeCloseTo(6 / 29, 12);
  });

  it('gives L* 50 for Y = 18.418651851244416, the exact inverse of its definition', () => {
    const w = whitePoint('D65/10deg');
    const Y = 100 * ((50 + 16) / 116) ** 3;
    expect(Y).toBeCloseTo(18.418651851244416, 10);
    expect(labOf({ X: (w.X * Y) / w.Y, Y, Z: (w.Z * Y) / w.Y, white: 'D65/10deg' }).L).toBeCloseTo(50, 3);
  });

  it('returns from a round trip', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: -90, max: 90, noNaN: true }),
        fc.double({ min: -90, max: 90, noNaN: true }),
        (L, a, b) => {
          const back = labOf(xyzFromLab({ L, a, b, white: 'A/2deg' }));
          return Math.abs(back.L - L) + Math.abs(back.a - a) + Math.abs(back.b - b) < 1e3 * SAME_ARITHMETIC;
        },
      ),
      { seed: 4 },
    );
  });

  it('has the derivative that finite differences find', () => {
    const R = Float64Array.from({ length: GRID_SIZE }, (_, i) => 0.05 + 0.02 * i);
    const J = labJacobian(R, weights);
    const h = 1e-6;
    for (const i of [0, 7, 20, 35]) {
      const up = R.slice();
      const down = R.slice();
      up[i]! += h;
      down[i]! -= h;
      const u = labOfReflectance(up, weights);
      const d = labOfReflectance(down, weights);
      const FINITE_DIFFERENCE = 1e-5;
      expect(Math.abs((u.L - d.L) / (2 * h) - J[0][i]!)).toBeLessThan(FINITE_DIFFERENCE);
      expect(Math.abs((u.a - d.a) / (2 * h) - J[1][i]!)).toBeLessThan(FINITE_DIFFERENCE);
      expect(Math.abs((u.b - d.b) / (2 * h) - J[2][i]!)).toBeLessThan(FINITE_DIFFERENCE);
    }
  });

  it('names hue angles from 0 up to 360 and 0 for a neutral', () => {
    expect(hueDegrees({ a: 0, b: 0 })).toBe(0);
    expect(hueDegrees({ a: 0, b: -1 })).toBe(270);
  });
});

describe('adaptation and display', () => {
  it('changes nothing between equal whites and returns from another', () => {
    const c: Lab = { L: 40, a: 30, b: -50, white: 'D65/10deg' };
    for (const to of ['D65/10deg', 'D50/2deg', 'A/10deg'] as const) {
      const back = adaptLab(adaptLab(c, to), 'D65/10deg');
      for (const k of ['L', 'a', 'b'] as const)
        expect(Math.abs(back[k] - c[k]) / 50, to).toBeLessThan(ADAPTATION_ROUND_TRIP * 5);
    }
  });

  it('shows white as white and black as black on any screen', () => {
    const white = displayColour({ L: 100, a: 0, b: 0, white: 'D65/10deg' });
    expect(white.inSrgb).toBe(true);
    expect(white.srgb).toMatch(/^rgb\((100\.00|99\.9\d)% (100\.00|99\.9\d)% (100\.00|99\.9\d)%\)$/);
    expect(displayColour({ L: 0, a: 0, b: 0, white: 'A/2deg' }).srgb).toBe('rgb(0.00% 0.00% 0.00%)');
  });

  it('agrees with culori for a colour inside the screen, under D65/2deg', () => {
    const toRgb = converter('rgb');
    const c = { L: 55, a: 20, b: 30 };
    const theirs = toRgb({ mode: 'lab65', l: c.L, a: c.a, b: c.b });
    const [r, g, b] = displayColour({ ...c, white: 'D65/2deg' })
      .srgb.match(/[\d.]+/g)!
      .map((v) => Number(v) / 100);
    expect(Math.abs(r! - theirs.r)).toBeLessThan(OTHER_LIBRARY_DISPLAY);
    expect(Math.abs(g! - theirs.g)).toBeLessThan(OTHER_LIBRARY_DISPLAY);
    expect(Math.abs(b! - theirs.b)).toBeLessThan(OTHER_LIBRARY_DISPLAY);
  });

  it('says so when no screen can show a colour', () => {
    const cadmiumLike = displayColour({ L: 60, a: 110, b: 110, white: 'D65/10deg' });
    expect(cadmiumLike.inSrgb).toBe(false);
    expect(cadmiumLike.inP3).toBe(false);
  });
});

describe('warm and cool', () => {
  it('calls orange warm, blue cool and grey neutral', () => {
    expect(leanWord({ a: 20, b: 30 })).toBe('warm');
    expect(leanWord({ a: -5, b: -30 })).toBe('cool');
    expect(leanWord({ a: 0.2, b: -0.3 })).toBe('neutral');
    expect(lean({ a: 0, b: 0 })).toBe(0);
  });
});
