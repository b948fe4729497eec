import { channelCount } from './channels.ts';
import { SwatchSetProblem } from './problem.ts';
import type { SwatchSet } from './schema.ts';
import { say } from './sentences.ts';

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
      say('response-rows', { rows: response.rows.length, channels }),
      'instrument.response.rows',
    );
  }
  response.rows.forEach((row, r) => {
    const at = `instrument.response.rows[${r}]`;
    if (row.length !== response.wavelengths.length) {
      throw new SwatchSetProblem(
        say('response-row', { row: r + 1, numbers: row.length, wavelengths: response.wavelengths.length }),
        at,
      );
    }
    const sum = row.reduce((a, b) => a + b, 0);
    if (Math.abs(sum - 1) > ROW_SUM_TOLERANCE) {
      throw new SwatchSetProblem(say('response-sum', { row: r + 1, sum: sum.toPrecision(5) }), at);
    }
  });
}

function holdAscending(wavelengths: readonly number[], at: string): void {
  for (let i = 1; i < wavelengths.length; i++) {
    if (!(wavelengths[i]! > wavelengths[i - 1]!)) {
      throw new SwatchSetProblem(
        say('not-ascending', { at, nm: wavelengths[i]!, before: wavelengths[i - 1]! }),
        at,
      );
    }
  }
}
