/**
 * Reflectance to XYZ by weighted sums: ASTM E308-15, "Computing the Colors of Objects by Using the CIE System".
 * Weights: tables/weights-lamps-10nm.ts and tables/weights-others-10nm.ts.
 */
import { foldWeights } from './fold-weights.ts';
import type { WhiteName } from './illuminant.ts';
import { LAMP_WEIGHTS } from './tables/weights-lamps-10nm.ts';
import { OTHER_WEIGHTS } from './tables/weights-others-10nm.ts';
import type { TristimulusWeights } from './xyz.ts';

const TABLES = { ...LAMP_WEIGHTS, ...OTHER_WEIGHTS };

/** Weights for readings at `wavelengthsNm` (ascending; the program's grid by default), under any white. */
export function tristimulusWeights<W extends WhiteName>(
  white: W,
  wavelengthsNm?: readonly number[],
): TristimulusWeights<W> {
  return foldWeights(white, TABLES[white], wavelengthsNm);
}
