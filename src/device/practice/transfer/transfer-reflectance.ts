/**
 * Invented paints read as radiative transfer would have it. Coefficients are per unit mass of tube paint, so the
 * albedo of a mixture is the mass-weighted scattering over the mass-weighted extinction:
 *
 *     w(lambda) = sum c_i sigma_s,i / sum c_i (sigma_s,i + sigma_a,i)
 *
 * The scale of the coefficients is free (an opaque film knows ratios only); the demo rack puts its white's
 * scattering at 1.
 */
import { GRID_SIZE, type Spectrum } from '../../../colour/grid.ts';
import { tabledReflectance } from './albedo-table.ts';
import type { TransferGeometry } from './half-space.ts';

/** One invented tube. Spectra are on the 380-730 nm grid. */
export interface TransferPaint {
  readonly id: string;
  readonly label: string;
  /** Colour Index generic names. */
  readonly pigments: readonly string[];
  /** sigma_a, per unit mass of tube paint, 0 or more. */
  readonly absorption: Spectrum;
  /** sigma_s, same unit, above 0. */
  readonly scattering: Spectrum;
  /** g/ml. */
  readonly density?: number;
  /** Its particles crowd each other: see `crowding`. */
  readonly role?: 'white';
}

/** One paint of a mixture and its mass (any unit; only ratios count). */
export interface TransferPart {
  readonly paint: TransferPaint;
  readonly mass: number;
}

export interface TransferView {
  readonly geometry: TransferGeometry;
  /** Index of the film against air; 1.5 when left out. */
  readonly refractiveIndex?: number;
  /**
   * Share of its scattering that a white loses when it is the whole of the mixture (0 up to 1); the loss is taken
   * proportional to the white's mass fraction. Scattering falls continuously with the pigment's concentration
   * (J. Auger and B. Stout, J. Coat. Technol. Res. 8 (2011) 287-295); the straight line is this project's choice.
   */
  readonly crowding?: number;
}

export const DEFAULT_FILM_INDEX = 1.5;

/** Mass-weighted coefficients of a mixture. */
export interface MixtureCoefficients {
  readonly absorption: Spectrum;
  readonly scattering: Spectrum;
}

/**
 * Coefficients of a mixture per unit mass.
 * @throws RangeError when a mass is negative or not a number, or when all are zero.
 */
export function mixtureCoefficients(parts: readonly TransferPart[], crowding = 0): MixtureCoefficients {
  if (!(crowding >= 0 && crowding < 1)) {
    throw new RangeError(`Crowding is a share from 0 up to, not including, 1; ${crowding} was given.`);
  }
  let total = 0;
  for (const { paint, mass } of parts) {
    if (!(mass >= 0 && Number.isFinite(mass))) {
      throw new RangeError(`The mass of "${paint.label}" is ${mass}; give zero or more.`);
    }
    total += mass;
  }
  if (!(total > 0)) throw new RangeError('A mixture needs at least one paint with a mass above zero.');
  const absorption = new Float64Array(GRID_SIZE);
  const scattering = new Float64Array(GRID_SIZE);
  for (const { paint, mass } of parts) {
    const c = mass / total;
    const kept = paint.role === 'white' ? 1 - crowding * c : 1;
    for (let i = 0; i < GRID_SIZE; i++) {
      absorption[i]! += c * paint.absorption[i]!;
      scattering[i]! += c * kept * paint.scattering[i]!;
    }
  }
  return { absorption, scattering };
}

/** Reflectance factor of an opaque film of a mixture, on the grid, as the geometry reads it; free of noise. */
export function transferReflectance(parts: readonly TransferPart[], view: TransferView): Spectrum {
  const { absorption, scattering } = mixtureCoefficients(parts, view.crowding);
  const n = view.refractiveIndex ?? DEFAULT_FILM_INDEX;
  return scattering.map((s, i) => tabledReflectance(s / (s + absorption[i]!), n, view.geometry));
}
