/**
 * The opaque film: P. Kubelka, F. Munk, "Ein Beitrag zur Optik der Farbanstriche", Zeitschrift fuer technische Physik
 * 12 (1931) 593-601, and P. Kubelka, J. Opt. Soc. Am. 38 (1948) 448-457.
 * q = K/S = (1-R)^2 / (2R);  R = 1 + q - sqrt(q^2 + 2q) = 1 / (1 + q + sqrt(q^2 + 2q)).
 * R is the INTERNAL reflectance of a film thick enough to hide, 0 < R <= 1; the surface is in surface.ts.
 */
import { say } from '../palette-sentences.ts';

/**
 * K/S of an internal reflectance.
 * @throws RangeError unless 0 < R <= 1.
 */
export function kOverS(R: number): number {
  if (!(R > 0 && R <= 1)) {
    throw new RangeError(say('internal-reflectance', { R }));
  }
  return ((1 - R) * (1 - R)) / (2 * R);
}

/** Internal reflectance of q = K/S >= 0, in the form that does not cancel where q is large. */
export function reflectanceOfKOverS(q: number): number {
  return 1 / (1 + q + Math.sqrt(q * (q + 2)));
}

/** dq/dR = -(1-R^2)/(2R^2). */
export function kOverSSlope(R: number): number {
  return -((1 - R) * (1 + R)) / (2 * R * R);
}

/** dR/dq = -2R^2/(1-R^2), at the internal reflectance R (0 < R < 1). */
export function reflectanceSlope(R: number): number {
  return (-2 * R * R) / ((1 - R) * (1 + R));
}

/**
 * dR/dln q = -R(1-R)/(1+R): finite over the whole range 0..1, which the two slopes above are not.
 */
export function reflectanceLogSlope(R: number): number {
  return (-R * (1 - R)) / (1 + R);
}
