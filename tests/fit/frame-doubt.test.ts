/** Outside check: differences of the prediction itself, with surface and crowding moved by hand. */
import { describe, expect, it } from 'vitest';
import { GRID_SIZE, flatSpectrum } from '../../src/colour/grid.ts';
import { GEOMETRIES } from '../../src/calibrate/swatch-set/schema.ts';
import { FRAME_DOUBTS, type FrameDoubt } from '../../src/fit/frame-doubt.ts';
import { luminanceOf } from '../../src/fit/luminance.ts';
import { sdOf } from '../../src/fit/doubt.ts';
import { transportSurfaceFor } from '../../src/fit/optics/surface.ts';
import type { MixingPalette } from '../../src/fit/palette.ts';
import { type PredictedFilm, predictReflectance, predictWithCovariance } from '../../src/fit/predict.ts';
import { movedFrame } from '../../src/profile/merge/moved-frame.ts';
import { OPTICS_SLOPE_BY_DIFFERENCES } from '../tolerances.ts';

const none = (): Float64Array => new Float64Array(2 * GRID_SIZE);
const tube = (id: string, lnK: number, lnS: number) => ({
  id,
  lnK: flatSpectrum(lnK),
  lnS: flatSpectrum(lnS),
  own: [],
  shared: [none(), none()],
});
const paletteAt = (geometry: MixingPalette['geometry'], frameDoubt?: FrameDoubt): MixingPalette => ({
  tubes: [tube('white', -5, 0), tube('blue', 0.5, -1.5)],
  white: 'white',
  geometry,
  surface: transportSurfaceFor(geometry),
  crowding: 0.1,
  discrepancy: { sdLnKS: flatSpectrum(0), correlationNm: 60 },
  ...(frameDoubt ? { frameDoubt } : {}),
});
const FILMS: readonly PredictedFilm[] = ['opaque', { X: 1.5, backing: flatSpectrum(0.7) }];
const tint = { blue: 1, white: 4 };

describe('doubt of surface and crowding in a prediction', () => {
  it('is none where a palette states none', () => {
    const { factor } = predictWithCovariance(paletteAt('45/0'), tint);
    expect(Math.max(...factor.flatMap((column) => Array.from(column, Math.abs)))).toBe(0);
  });

  it.each(GEOMETRIES)('moves the reading as the constants do, each by itself: %s', (geometry) => {
    const h = 1e-6;
    for (const name of FRAME_DOUBTS) {
      if (name === 'escape' && geometry !== '45/0') continue;
      const doubt = { [name]: Float64Array.of(0, h) };
      const palette = paletteAt(geometry, doubt);
      const moved = (sign: number): MixingPalette => ({
        ...palette,
        ...movedFrame(palette, { [name]: Float64Array.of(0, sign * h) }, 1),
      });
      for (const film of FILMS) {
        const up = predictReflectance(moved(1), tint, film).measured;
        const down = predictReflectance(moved(-1), tint, film).measured;
        const column = predictWithCovariance(palette, tint, film).factor[1]!;
        column.forEach((v, i) => {
          expect(Math.abs(v / h - (up[i]! - down[i]!) / (2 * h))).toBeLessThan(OPTICS_SLOPE_BY_DIFFERENCES);
        });
      }
    }
  });

  it('goes with the tubes where one shared number moves both, so that what cancels does not count', () => {
    // Haze up, and the tint just as much darker.
    const haze = Float64Array.of(0.001, 0);
    const palette = paletteAt('45/0', { haze });
    const slope = predictReflectance(palette, tint).measured[0]!;
    const against = luminanceOf(palette, tint);
    const alone = sdOf(palette, against.slopes);
    const g = against.slopes.tubes.get('blue')!;
    const perLnK = g.subarray(0, GRID_SIZE).reduce((a, v) => a + v, 0);
    const shared = [none(), none()];
    shared[0]!.fill(-alone / perLnK, 0, GRID_SIZE);
    const tubes = palette.tubes.map((t) => (t.id === 'blue' ? { ...t, shared } : t));
    expect(slope).toBeGreaterThan(0);
    expect(alone).toBeGreaterThan(0.09);
    expect(sdOf({ ...palette, tubes }, against.slopes)).toBeLessThan(1e-9);
  });
});
