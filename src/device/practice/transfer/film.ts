/**
 * A drawdown that may not hide: a film of invented paint on a card, by radiative transfer under a smooth Fresnel
 * boundary. The card sends light back evenly in all directions inside the film (a Lambertian backing in optical
 * contact); a bare card is the same backing under the boundary alone, as if it had a clear sealing coat.
 */
import { Matrix, solve } from 'ml-matrix';
import { GRID_SIZE, type Spectrum } from '../../../colour/grid.ts';
import type { TransferGeometry } from './half-space.ts';
import { type BeamDirections, beamDirections } from './beam-directions.ts';
import { type Slab, slab } from './slab.ts';
import {
  DEFAULT_FILM_INDEX,
  type TransferPart,
  type TransferView,
  mixtureCoefficients,
} from './transfer-reflectance.ts';

/**
 * Optical thickness of scattering, per micrometre of film, of a paint whose scattering coefficient is 1 (the demo
 * white). Chosen so that 100 um of the white nearly hides: invented, like the paints.
 */
export const SCATTERING_PER_MICROMETRE = 0.25;

/** A film thicker than this, in mean free paths, is taken as this thick. */
const THICKEST = 1e6;

const directionsOf = new Map<string, BeamDirections>();
function directionsFor(n: number, geometry: TransferGeometry): BeamDirections {
  const key = `${n} ${geometry}`;
  let directions = directionsOf.get(key);
  if (!directions) {
    const outside = Math.cos(((geometry === '45/0' ? 45 : 8) * Math.PI) / 180);
    directionsOf.set(key, (directions = beamDirections(n, outside)));
  }
  return directions;
}

/** The layer on a Lambertian backing of internal reflectance `backing`, 0..1: radiance in to radiance out. */
function onBacking({ up, through }: Slab, backing: number, { mu, weights }: BeamDirections): Matrix {
  const flux = Array.from(mu, (m, i) => 2 * weights[i]! * m);
  // What reaches the card from each direction, what its even glow sends out, and what of the glow comes back to it.
  const reaching = Matrix.rowVector(flux).mmul(through);
  const glow = Matrix.columnVector(through.sum('row'));
  const back = up.sum('row').reduce((sum, v, i) => sum + flux[i]! * v, 0);
  return Matrix.add(up, glow.mmul(reaching).mul(backing / (1 - backing * back)));
}

/** What comes out through the boundary over a layer that turns radiance in to radiance out, as the geometry reads it. */
function throughBoundary(turned: Matrix, n: number, geometry: TransferGeometry): number {
  const { mu, weights, internal, beam, eye, first } = directionsFor(n, geometry);
  const size = mu.length;
  const system = Matrix.eye(size, size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) system.set(i, j, system.get(i, j) - turned.get(i, j) * internal[j]!);
  }
  // A flux of pi through the surface along the beam, as a radiance in its one direction.
  const lit = 1 / (2 * mu[beam]! * weights[beam]!);
  const right = Matrix.columnVector(turned.getColumn(beam).map((v) => v * lit));
  const I = solve(system, right).to1DArray();
  if (geometry === '45/0') return ((1 - first) * (1 - internal[eye]!) * I[eye]!) / (n * n);
  const leaving = I.reduce((sum, v, i) => sum + 2 * weights[i]! * mu[i]! * (1 - internal[i]!) * v, 0);
  return (geometry === 'd/8 specular included' ? first : 0) + (1 - first) * leaving;
}

/**
 * Reflectance factor of one layer on a card.
 * @param tau optical thickness, scattering and absorption together; 0 is the bare card
 * @param backing internal reflectance of the card, 0..1
 */
export function layerReflectance(
  albedo: number,
  tau: number,
  backing: number,
  n: number,
  geometry: TransferGeometry,
): number {
  const directions = directionsFor(n, geometry);
  const layer = slab(albedo, Math.min(tau, THICKEST), directions.mu, directions.weights);
  return throughBoundary(onBacking(layer, backing, directions), n, geometry);
}

/** A film over a card, as painted. */
export interface TransferFilm {
  /** Dry film, um; above 0. */
  readonly thickness: number;
  /** Internal reflectance of each card under it, on the grid, 0..1. */
  readonly backings: readonly Spectrum[];
}

/**
 * Reflectance factor of one film over each of several backings, on the grid; free of noise.
 * @throws RangeError for a thickness that is not above zero
 */
export function filmReflectance(
  parts: readonly TransferPart[],
  film: TransferFilm,
  view: TransferView,
): Spectrum[] {
  if (!(film.thickness > 0))
    throw new RangeError(`A film is thicker than 0 um; ${film.thickness} was given.`);
  const { absorption, scattering } = mixtureCoefficients(parts, view.crowding);
  const n = view.refractiveIndex ?? DEFAULT_FILM_INDEX;
  const directions = directionsFor(n, view.geometry);
  const seen = film.backings.map(() => new Float64Array(GRID_SIZE));
  for (let i = 0; i < GRID_SIZE; i++) {
    const extinction = scattering[i]! + absorption[i]!;
    const tau = Math.min(THICKEST, extinction * SCATTERING_PER_MICROMETRE * film.thickness);
    const layer = slab(scattering[i]! / extinction, tau, directions.mu, directions.weights);
    film.backings.forEach((backing, b) => {
      seen[b]![i] = throughBoundary(onBacking(layer, backing[i]!, directions), n, view.geometry);
    });
  }
  return seen;
}

/** Reflectance factor of the bare card, from its internal reflectance on the grid. */
export function bareCardReflectance(backing: Spectrum, view: TransferView): Spectrum {
  const n = view.refractiveIndex ?? DEFAULT_FILM_INDEX;
  const directions = directionsFor(n, view.geometry);
  const nothing = slab(0, 0, directions.mu, directions.weights);
  return backing.map((Rg) => throughBoundary(onBacking(nothing, Rg, directions), n, view.geometry));
}
