import { GRID_NM, GRID_SIZE } from '../../src/colour/grid.ts';
import { surfaceFor } from '../../src/fit/optics/surface.ts';
import type { MixingPalette } from '../../src/fit/palette.ts';

/** Three invented tubes: a white, a warm and a cool. Absorption rises or falls in one smooth step. */
export function madePalette(ids: readonly string[] = ['white', 'warm', 'cool']): MixingPalette {
  const step = (nm: number, at: number, width: number): number => 1 / (1 + Math.exp((nm - at) / width));
  const tubes = [
    { id: 'white', K: (nm: number) => 0.004 + 0.3 * step(nm, 400, 8), S: 1 },
    { id: 'warm', K: (nm: number) => 0.08 + 3 * step(nm, 570, 16), S: 0.35 },
    { id: 'cool', K: (nm: number) => 0.2 + 2.5 * (1 - step(nm, 520, 22)), S: 0.12 },
  ];
  const base = {
    white: 'white',
    geometry: '45/0' as const,
    surface: surfaceFor('45/0'),
    discrepancy: { sdLnKS: new Float64Array(GRID_SIZE), correlationNm: 60 },
    tubes: tubes
      .filter((t) => ids.includes(t.id))
      .map((t) => ({
        id: t.id,
        lnK: Float64Array.from(GRID_NM, (nm) => Math.log(t.K(nm))),
        lnS: new Float64Array(GRID_SIZE).fill(Math.log(t.S)),
        own: [],
        shared: [],
      })),
  };
  return base as unknown as MixingPalette;
}
