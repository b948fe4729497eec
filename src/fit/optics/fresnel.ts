/**
 * Reflection at the smooth boundary between air and a film of refractive index n: Fresnel's equations for
 * unpolarised light, and their mean over diffuse light. The diffuse mean is the closed form of S. Q. Duntley,
 * "The optical properties of diffusing materials", J. Opt. Soc. Am. 32 (1942) 61-70 (equation from memory, held to
 * quadrature in the tests). Inside: r_i = 1 - (1 - r_e)/n^2, reciprocity.
 */
import { say } from '../palette-sentences.ts';

/** Share of unpolarised light reflected at `degrees` from the normal, going into index n (n > 1) from air. */
export function fresnelReflectance(n: number, degrees: number): number {
  refuseIndex(n);
  const cosIn = Math.cos((degrees * Math.PI) / 180);
  const cosOut = Math.sqrt(1 - (1 - cosIn * cosIn) / (n * n));
  const rs = (cosIn - n * cosOut) / (cosIn + n * cosOut);
  const rp = (n * cosIn - cosOut) / (n * cosIn + cosOut);
  return (rs * rs + rp * rp) / 2;
}

/** Share of perfectly diffuse light reflected at the surface, lit from outside (r_e). */
export function diffuseReflectanceOutside(n: number): number {
  refuseIndex(n);
  if (n === 1) return 0;
  const n2 = n * n;
  const p = n2 + 1;
  const m = n2 - 1;
  return (
    1 / 2 +
    ((n - 1) * (3 * n + 1)) / (6 * (n + 1) * (n + 1)) +
    ((n2 * m * m) / (p * p * p)) * Math.log((n - 1) / (n + 1)) -
    (2 * n2 * n * (n2 + 2 * n - 1)) / (p * (n2 * n2 - 1)) +
    ((8 * n2 * n2 * (n2 * n2 + 1)) / (p * (n2 * n2 - 1) * (n2 * n2 - 1))) * Math.log(n)
  );
}

/** Share of perfectly diffuse light reflected back at the surface, lit from inside the film (r_i, Saunderson's k2). */
export function diffuseReflectanceInside(n: number): number {
  return 1 - (1 - diffuseReflectanceOutside(n)) / (n * n);
}

function refuseIndex(n: number): void {
  if (!(n >= 1 && n <= 3)) {
    throw new RangeError(say('refractive-index', { n }));
  }
}
