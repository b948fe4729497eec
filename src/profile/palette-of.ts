import { GRID_SIZE } from '../colour/grid.ts';
import type { FrameDoubt } from '../fit/frame-doubt.ts';
import type { MixingPalette } from '../fit/palette.ts';
import type { Surface } from '../fit/optics/surface.ts';
import type { PaletteProfile } from './schema.ts';

/** A profile as the palette the mixing rooms compute with: logarithms taken, columns as typed arrays. */
export function paletteOf(profile: PaletteProfile): MixingPalette {
  const { estimated: _estimated, escape, ...constants } = profile.surface;
  const surface: Surface = {
    ...constants,
    ...(escape === undefined ? {} : { escape }),
  };
  return {
    white: profile.white,
    geometry: profile.geometry,
    surface,
    ...(profile.crowding === undefined ? {} : { crowding: profile.crowding }),
    ...(profile.frameDoubt ? { frameDoubt: frameOf(profile.frameDoubt) } : {}),
    tubes: profile.tubes.map((tube) => ({
      id: tube.id,
      ...(tube.label ? { label: tube.label } : {}),
      lnK: Float64Array.from(tube.K, Math.log),
      lnS: Float64Array.from(tube.S, Math.log),
      own: tube.covariance.own.map((c) => Float64Array.from(c)),
      shared: tube.covariance.shared.map((c) => Float64Array.from(c)),
    })),
    discrepancy: {
      sdLnKS: Float64Array.from(profile.discrepancy.sdLnKS.slice(0, GRID_SIZE)),
      correlationNm: profile.discrepancy.correlationNm,
      ...(profile.discrepancy.sdHaze === undefined ? {} : { sdHaze: profile.discrepancy.sdHaze }),
    },
  };
}

function frameOf(doubt: NonNullable<PaletteProfile['frameDoubt']>): FrameDoubt {
  return Object.fromEntries(
    Object.entries(doubt).flatMap(([name, v]) => (v ? [[name, Float64Array.from(v)]] : [])),
  );
}
