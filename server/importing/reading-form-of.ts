import type { InstrumentDescription } from '../../src/calibrate/swatch-set/schema.ts';
import { parseWhiteName, whiteParts } from '../../src/colour/illuminant.ts';
import type { ReadingForm } from '../api/readings.ts';

/**
 * How a file's instrument is remembered: what the fit needs, without the file's own remarks.
 * @throws RangeError for an illuminant or observer that is not known.
 */
export function readingFormOf(instrument: InstrumentDescription): ReadingForm {
  const { geometry, name, response } = instrument;
  const common = { geometry, ...(name ? { name } : {}), ...(response ? { response } : {}) };
  switch (instrument.kind) {
    case 'spectral':
      return { kind: 'spectral', ...common, wavelengths: instrument.wavelengths };
    case 'bands':
      return { kind: 'bands', ...common, bands: instrument.bands };
    case 'tristimulus':
      return {
        kind: 'tristimulus',
        ...common,
        ...whiteParts(parseWhiteName(instrument.illuminant, instrument.observer)),
      };
  }
}
