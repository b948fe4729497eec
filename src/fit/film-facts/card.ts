import { flatSpectrum } from '../../colour/grid.ts';

/**
 * A sealed white and black card, as reflectance factors. ASTM D2805 asks for at least 0.78 and at most 0.01 (from a
 * published summary of the standard).
 */
export const SEALED_CARD = { white: flatSpectrum(0.82), black: flatSpectrum(0.01) };
