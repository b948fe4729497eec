/**
 * Reflectance to XYZ by weighted sums: ASTM E308-15, "Computing the Colors of Objects by Using the CIE System".
 * Weights: tables/tristimulus-weights-10nm.ts. Where a reading stops short of the table, the weights of the missing
 * wavelengths are added to the last measured one (E308, 7.3.2.2 in the 2015 text, clause number from memory).
 */
import { GRID_NM } from './grid.ts';
import { type WhiteName, tableFor } from './illuminant.ts';
import { interpolationRows } from './interpolation.ts';
import { say } from './sentences.ts';

/** CIE tristimulus values; Y of the perfect diffuser is 100. The white is carried so that it cannot be mistaken. */
export interface Xyz<W extends WhiteName = WhiteName> {
  readonly X: number;
  readonly Y: number;
  readonly Z: number;
  readonly white: W;
}

/** One set of weights: X = sum x[i] R[i], and so on; each the same length as the wavelengths. */
export interface TristimulusWeights<W extends WhiteName = WhiteName> {
  readonly white: W;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
}

const TABLE_NM = Array.from({ length: 43 }, (_, i) => 360 + 10 * i);
const onGrid = new Map<WhiteName, TristimulusWeights>();
/** Weights elsewhere, by white and wavelengths: one instrument asks for the same ones at every reading. */
const elsewhere = new Map<string, TristimulusWeights>();
const MOST_KEPT = 32;

/**
 * Weights for readings at `wavelengthsNm` (ascending). On a 10 nm grid these are the table's own numbers with the
 * ends folded in; on any other wavelengths the reading is interpolated linearly to the table's.
 */
export function tristimulusWeights<W extends WhiteName>(
  white: W,
  wavelengthsNm: readonly number[] = GRID_NM,
): TristimulusWeights<W> {
  const gridded = wavelengthsNm === GRID_NM;
  const key = gridded ? '' : `${white} ${wavelengthsNm.join(' ')}`;
  const cached = gridded ? onGrid.get(white) : elsewhere.get(key);
  if (cached) return cached as TristimulusWeights<W>;
  const rows = interpolationRows(wavelengthsNm, TABLE_NM);
  const table = tableFor(white);
  const fold = (w: readonly number[]): Float64Array => {
    const sum = new Float64Array(wavelengthsNm.length);
    rows.forEach((row, t) => row.forEach((v, i) => (sum[i]! += v * w[t]!)));
    return sum;
  };
  const weights = { white, x: fold(table.x), y: fold(table.y), z: fold(table.z) };
  if (gridded) onGrid.set(white, weights);
  else {
    if (elsewhere.size >= MOST_KEPT) elsewhere.clear();
    elsewhere.set(key, weights);
  }
  return weights;
}

/** Integrates a reflectance factor (0..1, a little over 1 allowed) sampled where the weights are. */
export function xyzOf<W extends WhiteName>(
  reflectance: ArrayLike<number>,
  weights: TristimulusWeights<W>,
): Xyz<W> {
  if (reflectance.length !== weights.x.length) {
    throw new RangeError(say('weights', { wavelengths: weights.x.length, count: reflectance.length }));
  }
  let X = 0;
  let Y = 0;
  let Z = 0;
  for (let i = 0; i < reflectance.length; i++) {
    const r = reflectance[i]!;
    X += weights.x[i]! * r;
    Y += weights.y[i]! * r;
    Z += weights.z[i]! * r;
  }
  return { X, Y, Z, white: weights.white };
}

/** The perfect diffuser: R = 1 everywhere. */
export function whitePoint<W extends WhiteName>(white: W): Xyz<W> {
  const sum = (w: Float64Array): number => w.reduce((a, b) => a + b, 0);
  const w = tristimulusWeights(white);
  return { X: sum(w.x), Y: sum(w.y), Z: sum(w.z), white };
}
