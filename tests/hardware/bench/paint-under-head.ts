import { GRID_NM, GRID_SIZE } from '../../../src/colour/grid.ts';
import type { Spectrum } from '../../../src/colour/grid.ts';
import { PRACTICE_BLACK_TRAP, PRACTICE_WHITE_TILE } from '../../../src/device/practice/surfaces.ts';
import { transferReflectance } from '../../../src/device/practice/transfer/transfer-reflectance.ts';
import type { TransferPart } from '../../../src/device/practice/transfer/transfer-reflectance.ts';
import type { BenchHead } from './bench-head.ts';

/** Bands of the catalogue the firmware carries, nm; the lamp is taken as equal in all of them. */
export const BANDS: readonly (readonly [string, number, number])[] = [
  ['F1', 415, 26],
  ['F2', 445, 30],
  ['F3', 480, 36],
  ['F4', 515, 39],
  ['F5', 555, 39],
  ['F6', 590, 40],
  ['F7', 630, 50],
  ['F8', 680, 52],
];

/** Weight of each wavelength in a band, on the grid, summing to 1. */
export const BAND_ROWS: readonly (readonly number[])[] = BANDS.map(([, centre, fwhm]) => {
  const bell = GRID_NM.map((nm) => Math.exp(-4 * Math.LN2 * ((nm - centre) / fwhm) ** 2));
  const sum = bell.reduce((a, b) => a + b);
  return bell.map((value) => value / sum);
});

/** Light of a perfect white, counts per ms at gain 1, in F1..F8; clear and infrared get a share of their own. */
const PERFECT_WHITE = [1.9, 2.6, 3.1, 3.6, 4.2, 4.4, 4.1, 3];
const CLEAR = 3.5;
const INFRARED = 0.8;
/** Light that comes back inside the head without touching the paint, as a share of a perfect white. */
const FLARE = 0.004;

/** What a band sees of a surface. */
export function bandsOf(reflectance: Spectrum): number[] {
  return BAND_ROWS.map((row) => row.reduce((sum, weight, i) => sum + weight * reflectance[i]!, 0));
}

export const WHITE_TILE = PRACTICE_WHITE_TILE;
export const BLACK_TRAP = PRACTICE_BLACK_TRAP;

/** An invented mixture's true reflectance factor, by radiative transfer, as a 45/0 head reads it. */
export function mixtureReflectance(parts: readonly TransferPart[]): Spectrum {
  return transferReflectance(parts, { geometry: '45/0' });
}

/** Lays a surface under the head: sets the light that reaches each photodiode of the modelled sensor. */
export async function lay(bench: BenchHead, reflectance: Spectrum): Promise<void> {
  const mean = reflectance.reduce((sum, r) => sum + r, 0) / GRID_SIZE;
  const bands = bandsOf(reflectance).map((R, i) => PERFECT_WHITE[i]! * (R + FLARE));
  await bench.light([...bands, CLEAR * (mean + FLARE), INFRARED * (mean + FLARE)]);
}
