/**
 * Smooth curves from which invented paints are drawn: a pigment's absorption is told as a few bands and edges.
 * Wavelengths and widths in nm; results on the 380-730 nm grid.
 */
import { GRID_NM, type Spectrum } from '../../../colour/grid.ts';

export type Curve = (nm: number) => number;

/** A constant. */
export const flat =
  (height: number): Curve =>
  () =>
    height;

/** A bell centred at `centre`, standard deviation `width`. */
export const bell =
  (height: number, centre: number, width: number): Curve =>
  (nm) =>
    height * Math.exp(-(((nm - centre) / width) ** 2) / 2);

/** High below `edge`, nothing above it; `width` is the logistic scale. */
export const below =
  (height: number, edge: number, width: number): Curve =>
  (nm) =>
    height / (1 + Math.exp((nm - edge) / width));

/** Nothing below `edge`, high above it. */
export const above =
  (height: number, edge: number, width: number): Curve =>
  (nm) =>
    height / (1 + Math.exp((edge - nm) / width));

/** The sum of curves, sampled. */
export function drawn(...curves: readonly Curve[]): Spectrum {
  return Float64Array.from(GRID_NM, (nm) => curves.reduce((sum, curve) => sum + curve(nm), 0));
}
