import { MixProblem } from './problem.ts';

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
    throw new MixProblem(
      'This profile knows no film thickness, so micrometres mean nothing to it; read one drawdown of known thickness ' +
        "over black and white, or give the thickness in units of the white's scattering.",
    );
  }
  if (!(micrometres >= 0 && Number.isFinite(micrometres)) || !(relativeDensity > 0)) {
    throw new MixProblem(`A film of ${micrometres} um cannot be; give 0 or more micrometres.`);
  }
  return { X: micrometres * white.value * relativeDensity, sdLnX: white.relativeSigma };
}
