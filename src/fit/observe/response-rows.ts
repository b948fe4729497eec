import type { InstrumentDescription } from '../../calibrate/swatch-set/schema.ts';
import { GRID_NM, GRID_SIZE } from '../../colour/grid.ts';
import { parseWhiteName } from '../../colour/illuminant.ts';
import { interpolationRows } from '../../colour/interpolation.ts';
import { tristimulusWeights } from '../../colour/tristimulus.ts';
import { say } from '../sentences.ts';

/** FWHM of a Gaussian in units of its standard deviation. */
const FWHM_PER_SIGMA = 2 * Math.sqrt(2 * Math.log(2));

/**
 * The observation matrix A of an instrument: one row of 36 numbers per channel, each summing to 1; a reading is
 * A times the reflectance factor on the grid. A reading at a wavelength interpolates the grid linearly; beyond the grid
 * it holds the end value.
 */
export function responseRows(instrument: InstrumentDescription): Float64Array[] {
  const { response } = instrument;
  if (response) {
    const toGrid = interpolationRows(GRID_NM, response.wavelengths);
    return response.rows.map((row) => {
      const on = new Float64Array(GRID_SIZE);
      row.forEach((w, k) => toGrid[k]!.forEach((t, i) => (on[i]! += w * t)));
      return normalised(on);
    });
  }
  switch (instrument.kind) {
    case 'spectral':
      return interpolationRows(GRID_NM, instrument.wavelengths);
    case 'bands':
      return instrument.bands.map(({ centre, fwhm }) =>
        normalised(
          Float64Array.from(GRID_NM, (nm) => Math.exp(-0.5 * (((nm - centre) * FWHM_PER_SIGMA) / fwhm) ** 2)),
        ),
      );
    case 'tristimulus': {
      const weights = tristimulusWeights(parseWhiteName(instrument.illuminant, instrument.observer));
      return [weights.x, weights.y, weights.z].map((row) => normalised(Float64Array.from(row)));
    }
  }
}

function normalised(row: Float64Array): Float64Array {
  const sum = row.reduce((a, b) => a + b, 0);
  if (!(sum > 0)) {
    throw new RangeError(say('blind-band'));
  }
  return row.map((v) => v / sum);
}

/** Reading of a reflectance factor on the grid. */
export function readingOf(rows: readonly Float64Array[], reflectance: ArrayLike<number>): Float64Array {
  const reading = new Float64Array(rows.length);
  for (let c = 0; c < rows.length; c++) {
    const row = rows[c]!;
    // A narrow band sees a few samples: the zeros on both sides are most of a spectral head's matrix.
    let from = 0;
    let to = row.length;
    while (from < to && row[from] === 0) from++;
    while (to > from && row[to - 1] === 0) to--;
    let sum = 0;
    for (let i = from; i < to; i++) sum += row[i]! * reflectance[i]!;
    reading[c] = sum;
  }
  return reading;
}
