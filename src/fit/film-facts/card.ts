import { type Spectrum, flatSpectrum } from '../../colour/grid.ts';
import { type Surface, surfaceForward } from '../optics/surface.ts';

/**
 * A sealed white and black card, as reflectance factors. ASTM D2805 asks for at least 0.78 and at most 0.01 (from a
 * published summary of the standard).
 */
const WHITE = 0.82;
const BLACK = 0.01;
/** Internal reflectance of the black card where its surface alone already reads more than 0.01. */
const HARDLY_ANY = 0.002;

export interface SealedCard {
  readonly white: Spectrum;
  readonly black: Spectrum;
}

/**
 * The card as this geometry reads it. With the specular component included a gloss reads about 0.04 of itself, so that no
 * card is as black as 0.01: there the black one lies just over what the surface alone reads.
 */
export function sealedCard(surface: Surface): SealedCard {
  return {
    white: flatSpectrum(WHITE),
    black: flatSpectrum(Math.max(BLACK, surfaceForward(surface, HARDLY_ANY))),
  };
}
