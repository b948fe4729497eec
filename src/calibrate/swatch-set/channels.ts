import type { InstrumentDescription } from './schema.ts';

/** How many numbers one reading of an instrument has. */
export function channelCount(instrument: InstrumentDescription): number {
  switch (instrument.kind) {
    case 'spectral':
      return instrument.wavelengths.length;
    case 'bands':
      return instrument.bands.length;
    case 'tristimulus':
      return 3;
  }
}
