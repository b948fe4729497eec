import { channelCount } from './channels.ts';
import { SwatchSetProblem } from './problem.ts';
import type { SwatchSet } from './schema.ts';

/** A response row sums to 1 within the rounding of six printed decimals over a few hundred numbers. */
const ROW_SUM_TOLERANCE = 1e-3;

/** Wavelengths ascend; a response has one row per channel and each sums to 1. */
export function holdInstrumentRules({ instrument }: SwatchSet): void {
  if (instrument.kind === 'spectral') holdAscending(instrument.wavelengths, 'instrument.wavelengths');
  const { response } = instrument;
  if (!response) return;
  holdAscending(response.wavelengths, 'instrument.response.wavelengths');
  const channels = channelCount(instrument);
  if (response.rows.length !== channels) {
    throw new SwatchSetProblem(
      `The instrument's response has ${response.rows.length} rows and its readings ${channels} channels; give one row per channel.`,
      'instrument.response.rows',
    );
  }
  response.rows.forEach((row, r) => {
    const at = `instrument.response.rows[${r}]`;
    if (row.length !== response.wavelengths.length) {
      throw new SwatchSetProblem(
        `Row ${r + 1} of the instrument's response has ${row.length} numbers for ${response.wavelengths.length} wavelengths; give one per wavelength.`,
        at,
      );
    }
    const sum = row.reduce((a, b) => a + b, 0);
    if (Math.abs(sum - 1) > ROW_SUM_TOLERANCE) {
      throw new SwatchSetProblem(
        `Row ${r + 1} of the instrument's response sums to ${sum.toPrecision(5)}; each row sums to 1, so divide it by its sum.`,
        at,
      );
    }
  });
}

function holdAscending(wavelengths: readonly number[], at: string): void {
  for (let i = 1; i < wavelengths.length; i++) {
    if (!(wavelengths[i]! > wavelengths[i - 1]!)) {
      throw new SwatchSetProblem(
        `In ${at}, ${wavelengths[i]} nm follows ${wavelengths[i - 1]} nm; wavelengths ascend, so sort them with their readings.`,
        at,
      );
    }
  }
}
