import { foldWeights } from './fold-weights.ts';
import { LAMP_WEIGHTS } from './tables/weights-lamps-10nm.ts';
import type { TristimulusWeights } from './xyz.ts';

/** The whites a page draws in: its viewing lamps, and the one Munsell value is defined under. */
export type LampWhite = keyof typeof LAMP_WEIGHTS;

/** As `tristimulusWeights`, for a page, which loads these few tables and leaves the others. */
export function lampWeights<W extends LampWhite>(
  white: W,
  wavelengthsNm?: readonly number[],
): TristimulusWeights<W> {
  return foldWeights(white, LAMP_WEIGHTS[white], wavelengthsNm);
}
