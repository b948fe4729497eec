/**
 * Linear interpolation between wavelengths, written as a matrix so that an instrument's readings, a set of
 * tristimulus weights and a fit can all use the same rows. Outside the source range the end value is held,
 * which is what ASTM E308 asks for where weights of missing wavelengths are added to the last measured one.
 */
import { say } from './sentences.ts';

/**
 * Rows that take a function sampled at `from` (nm, strictly ascending, at least one) to the wavelengths `to` (nm).
 * Result: `to.length` rows of `from.length` numbers, each row summing to 1.
 * @throws RangeError when `from` is empty or not ascending.
 */
export function interpolationRows(from: readonly number[], to: readonly number[]): Float64Array[] {
  if (from.length === 0) throw new RangeError(say('no-wavelength'));
  for (let i = 1; i < from.length; i++) {
    if (!(from[i]! > from[i - 1]!)) {
      throw new RangeError(say('not-ascending', { nm: from[i]!, before: from[i - 1]! }));
    }
  }
  const last = from.length - 1;
  return to.map((nm) => {
    const row = new Float64Array(from.length);
    if (nm <= from[0]!) row[0] = 1;
    else if (nm >= from[last]!) row[last] = 1;
    else {
      let hi = 1;
      while (from[hi]! < nm) hi++;
      const t = (nm - from[hi - 1]!) / (from[hi]! - from[hi - 1]!);
      row[hi - 1] = 1 - t;
      row[hi] = t;
    }
    return row;
  });
}
