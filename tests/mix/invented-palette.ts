import { GRID_NM, GRID_SIZE } from '../../src/colour/grid.ts';
import type { TubeConstants } from '../../src/fit/constants.ts';
import { surfaceFor } from '../../src/fit/optics/surface.ts';
import type { MixingPalette } from '../../src/fit/palette.ts';

/**
 * Invented tubes for tests of mixing: no such paint was measured. Absorption is a sum of bands and edges per unit of
 * mass, relative to the white's scattering, of the order that real oil paints have.
 */

type Curve = (nm: number) => number;
const bump =
  (centre: number, width: number, height: number): Curve =>
  (nm) =>
    height * Math.exp(-(((nm - centre) / width) ** 2));
/** Absorbs below `at`, clear above. */
const edge =
  (at: number, width: number, height: number): Curve =>
  (nm) =>
    height / (1 + Math.exp((nm - at) / width));
const flat =
  (level: number): Curve =>
  () =>
    level;
const sum =
  (...curves: Curve[]): Curve =>
  (nm) =>
    curves.reduce((s, c) => s + c(nm), 0);

const TUBES: Record<string, { K: Curve; S: Curve }> = {
  white: { K: sum(flat(0.0012), edge(405, 6, 0.25)), S: flat(1) },
  'deep-blue': { K: sum(flat(0.05), bump(610, 60, 2.6), edge(400, 15, 0.3)), S: flat(0.06) },
  'green-blue': { K: sum(flat(0.3), bump(650, 70, 19), edge(400, 20, 4)), S: flat(0.12) },
  'cool-green': { K: sum(flat(0.25), bump(640, 55, 14), edge(450, 14, 8)), S: flat(0.1) },
  'lemon-yellow': { K: sum(flat(0.008), edge(488, 7, 3.2)), S: flat(0.62) },
  'golden-yellow': { K: sum(flat(0.012), edge(522, 8, 3.6)), S: flat(0.7) },
  'yellow-earth': { K: sum(flat(0.07), edge(515, 22, 1.5)), S: flat(0.38) },
  'warm-red': { K: sum(flat(0.012), edge(588, 7, 3.4)), S: flat(0.66) },
  'red-lake': { K: sum(flat(0.04), bump(535, 55, 6), edge(430, 25, 2)), S: flat(0.05) },
  'red-earth': { K: sum(flat(0.25), edge(570, 20, 3.8)), S: flat(0.55) },
  'dark-earth': { K: sum(flat(1.1), edge(590, 60, 2.1)), S: flat(0.16) },
  black: { K: flat(8.5), S: flat(0.13) },
};

/** All the invented tubes' names, white first. */
export const INVENTED_TUBES = Object.keys(TUBES);

function constants(id: string): TubeConstants {
  const { K, S } = TUBES[id]!;
  const column = (f: (i: number) => number): Float64Array =>
    Float64Array.from({ length: 2 * GRID_SIZE }, (_, i) => f(i));
  return {
    id,
    lnK: Float64Array.from(GRID_NM, (nm) => Math.log(K(nm))),
    lnS: Float64Array.from(GRID_NM, (nm) => Math.log(S(nm))),
    own: [column((i) => 0.012 * Math.cos(i / 9)), column((i) => (i < GRID_SIZE ? 0.006 : 0.02))],
    shared: [column((i) => 0.003 * Math.sin(i / 6))],
  };
}

/** An invented palette of the named tubes (all twelve unless named), in the order given. */
export function inventedPalette(ids: readonly string[] = INVENTED_TUBES): MixingPalette {
  return {
    tubes: ids.map(constants),
    white: 'white',
    geometry: '45/0',
    surface: surfaceFor('45/0'),
    discrepancy: { sdLnKS: Float64Array.from(GRID_NM, () => 0.025), correlationNm: 60 },
  };
}
