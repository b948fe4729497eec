/**
 * Reflectance of an opaque paint film by radiative transfer: a half-space that scatters isotropically
 * (S. Chandrasekhar, "Radiative Transfer", chapter V) under a smooth Fresnel boundary that also throws light back in.
 *
 * Inside, the light going up at the surface is
 *     I(mu) = (w/4) F H(mu) H(mu0) mu0/(mu + mu0) + (w/2) int H(mu) H(mu') mu'/(mu + mu') r(mu') I(mu') dmu'
 * with pi F mu0 the flux let in per unit area and r the internal Fresnel reflectance: one small linear system.
 * Nothing here is Kubelka-Munk's: that is the point of a practice paint.
 */
import { Matrix, solve } from 'ml-matrix';
import { fresnelReflectance, refractedCosine } from './fresnel.ts';
import { hFunction } from './h-function.ts';
import { type Directions, filmDirections } from './quadrature.ts';

/** How the film is lit and seen; the strings are those of a swatch set. */
export const TRANSFER_GEOMETRIES = ['45/0', 'd/8 specular included', 'd/8 specular excluded'] as const;
export type TransferGeometry = (typeof TRANSFER_GEOMETRIES)[number];

/** Directions of the quadrature. 64 + 64 change R by less than 1e-14 from n = 1.33 up, by 2e-9 at n = 1. */
const TRAPPED = 24;
const ESCAPING = 24;

const directionsOf = new Map<number, Directions>();
function directionsFor(n: number): Directions {
  let d = directionsOf.get(n);
  if (!d) directionsOf.set(n, (d = filmDirections(n, TRAPPED, ESCAPING)));
  return d;
}

/** Light going up just under the surface, for a flux pi let in along `mu0` inside (so F mu0 = 1). */
function upwelling(albedo: number, n: number, mu0: number) {
  const { mu, weights, internal } = directionsFor(n);
  const H = hFunction(albedo, mu, weights);
  const H0 = H.at(mu0);
  const size = mu.length;
  const kernel = (m: number, Hm: number, j: number): number =>
    ((albedo / 2) * weights[j]! * Hm * H.atNodes[j]! * mu[j]! * internal[j]!) / (m + mu[j]!);
  const source = (m: number, Hm: number): number => ((albedo / 4) * Hm * H0) / (m + mu0);
  const matrix = Matrix.eye(size, size);
  const right = Matrix.zeros(size, 1);
  for (let i = 0; i < size; i++) {
    const Hi = H.atNodes[i]!;
    for (let j = 0; j < size; j++) matrix.set(i, j, matrix.get(i, j) - kernel(mu[i]!, Hi, j));
    right.set(i, 0, source(mu[i]!, Hi));
  }
  const I = solve(matrix, right).to1DArray();
  return {
    atNodes: I,
    at(m: number): number {
      const Hm = H.at(m);
      return I.reduce((sum, Ij, j) => sum + kernel(m, Hm, j) * Ij, source(m, Hm));
    },
  };
}

/**
 * Reflectance factor of an opaque film whose single-scattering albedo is `albedo` (0..1), index `n` (1 or more).
 * d/8 is computed as 8/d, which Helmholtz's reciprocity makes equal; the specular beam is the 8 degree one.
 */
export function halfSpaceReflectance(albedo: number, n: number, geometry: TransferGeometry): number {
  if (!(n >= 1)) throw new RangeError(`A refractive index is 1 or more; ${n} was given.`);
  const outside = Math.cos(((geometry === '45/0' ? 45 : 8) * Math.PI) / 180);
  const first = fresnelReflectance(n, outside);
  const up = upwelling(albedo, n, refractedCosine(n, outside));
  if (geometry === '45/0') {
    const escape = (1 - fresnelReflectance(1 / n, 1)) / (n * n);
    return (1 - first) * escape * up.at(1);
  }
  const { mu, weights, internal } = directionsFor(n);
  let leaving = 0;
  for (let i = 0; i < mu.length; i++) {
    leaving += 2 * weights[i]! * mu[i]! * (1 - internal[i]!) * up.atNodes[i]!;
  }
  const body = (1 - first) * leaving;
  return geometry === 'd/8 specular included' ? first + body : body;
}
