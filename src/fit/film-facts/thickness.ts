import { say } from '../sentences.ts';

/** A film's thickness: in units of the white's scattering, or in um where scattering per um is known. */
export type FilmThickness =
  | { readonly X: number }
  | {
      readonly micrometres: number;
      readonly perMicrometre: { readonly value: number; readonly relativeSigma: number };
    };

/**
 * The thickness in units of the white's scattering, and the doubt in its logarithm.
 * @throws RangeError for a thickness that is not above 0.
 */
export function thicknessX(thickness: FilmThickness): { X: number; sdLnX: number } {
  const given = 'X' in thickness ? thickness.X : thickness.micrometres;
  if (!(given > 0 && Number.isFinite(given))) {
    throw new RangeError(say('film-thickness', { given }));
  }
  if ('X' in thickness) return { X: given, sdLnX: 0 };
  const { value, relativeSigma } = thickness.perMicrometre;
  return { X: given * value, sdLnX: relativeSigma };
}
