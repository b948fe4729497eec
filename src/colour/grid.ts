/**
 * The one wavelength grid of the program: 380 to 730 nm in 10 nm steps, 36 samples.
 * Constants, recipes and predictions live on it; readings keep the wavelengths they came with.
 */
import { say } from './sentences.ts';

/** First wavelength of the grid, nm. */
export const GRID_START_NM = 380;
/** Last wavelength of the grid, nm. */
export const GRID_END_NM = 730;
/** Step of the grid, nm. */
export const GRID_STEP_NM = 10;
/** Number of samples on the grid. */
export const GRID_SIZE = (GRID_END_NM - GRID_START_NM) / GRID_STEP_NM + 1;

/** The 36 wavelengths, nm, ascending. */
export const GRID_NM: readonly number[] = Array.from(
  { length: GRID_SIZE },
  (_, i) => GRID_START_NM + i * GRID_STEP_NM,
);

/** A quantity sampled on the grid: 36 numbers, 380 nm first. */
export type Spectrum = Float64Array;

/** A spectrum with the same number everywhere. */
export function flatSpectrum(value: number): Spectrum {
  return new Float64Array(GRID_SIZE).fill(value);
}

/**
 * Copies 36 numbers into a spectrum.
 * @throws RangeError when there are not exactly 36.
 */
export function spectrumFrom(values: ArrayLike<number>): Spectrum {
  if (values.length !== GRID_SIZE) {
    throw new RangeError(say('grid-size', { size: GRID_SIZE, count: values.length }));
  }
  return Float64Array.from(values);
}
