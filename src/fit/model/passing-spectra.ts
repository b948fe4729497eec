import { GRID_SIZE } from '../../colour/grid.ts';

/**
 * Spectra for the sums of one group, handed out again for the next: a step makes some hundred of them, and new memory
 * takes longer than what is written to it. Nothing of them may be kept past `freePassing`.
 */
const spectra: Float64Array[] = [];
let taken = 0;

/** All that were handed out may be handed out again. */
export function freePassing(): void {
  taken = 0;
}

/** 36 numbers, whatever they are. */
export function passingSpectrum(): Float64Array {
  if (taken === spectra.length) spectra.push(new Float64Array(GRID_SIZE));
  return spectra[taken++]!;
}
