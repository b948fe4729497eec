import { MixProblem } from './problem.ts';
import { say } from './sentences.ts';

/** Scattering of the white per micrometre of film, as a profile carries it. */
export interface WhiteScattering {
  readonly value: number;
  readonly relativeSigma: number;
}

/**
 * Micrometres to the unit of a film's X, with the doubt in ln X. It takes the film's mass per area to be that of the
 * white at the same thickness: constants are per mass, so a paint half as dense as the white is in truth a film of
 * half that X, and `relativeDensity` (density over the white's) puts that right where densities are known.
 * @throws MixProblem where the profile knows no thickness, or the numbers are not a film's.
 */
export function filmThickness(
  micrometres: number,
  white: WhiteScattering | undefined,
  relativeDensity = 1,
): { X: number; sdLnX: number } {
  if (!white) {
    throw new MixProblem(say('no-thickness-known'));
  }
  if (!(micrometres >= 0 && Number.isFinite(micrometres)) || !(relativeDensity > 0)) {
    throw new MixProblem(say('micrometres', { um: micrometres }));
  }
  return { X: micrometres * white.value * relativeDensity, sdLnX: white.relativeSigma };
}
