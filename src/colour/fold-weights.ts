/**
 * A table of tristimulus weights brought to the wavelengths of a reading. Where a reading stops short of the table, the
 * weights of the missing wavelengths are added to the last measured one (ASTM E308-15, 7.3.2.2 in the 2015 text, clause
 * number from memory).
 */
import { GRID_NM } from './grid.ts';
import type { WhiteName } from './illuminant.ts';
import { interpolationRows } from './interpolation.ts';
import type { TristimulusWeights } from './xyz.ts';

/** One white's rows, 360-780 nm in 10 nm steps; Y of the perfect diffuser is 100. */
export interface WeightTable {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly z: readonly number[];
}

const TABLE_NM = Array.from({ length: 43 }, (_, i) => 360 + 10 * i);
const onGrid = new Map<WhiteName, TristimulusWeights>();
/** Weights elsewhere, by white and wavelengths: one instrument asks for the same ones at every reading. */
const elsewhere = new Map<string, TristimulusWeights>();
const MOST_KEPT = 32;

/**
 * On a 10 nm grid these are the table's own numbers with the ends folded in; on any other wavelengths (nm, ascending)
 * the reading is interpolated linearly to the table's.
 */
export function foldWeights<W extends WhiteName>(
  white: W,
  table: WeightTable,
  wavelengthsNm: readonly number[] = GRID_NM,
): TristimulusWeights<W> {
  const gridded = wavelengthsNm === GRID_NM;
  const key = gridded ? '' : `${white} ${wavelengthsNm.join(' ')}`;
  const cached = gridded ? onGrid.get(white) : elsewhere.get(key);
  if (cached) return cached as TristimulusWeights<W>;
  const rows = interpolationRows(wavelengthsNm, TABLE_NM);
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
