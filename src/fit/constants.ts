import type { Spectrum } from '../colour/grid.ts';

/**
 * The constants of one tube as the fit leaves them and as a mix takes them: ln K and ln S on the grid, with a
 * factor of their covariance. K and S are relative to the white's scattering, per unit mass of tube paint.
 */
export interface TubeConstants {
  readonly id: string;
  /** What stands on the tube, for sentences. @default the id */
  readonly label?: string;
  readonly lnK: Spectrum;
  readonly lnS: Spectrum;
  /** Columns of 72 numbers (36 for ln K, 36 for ln S); independent of every other tube. */
  readonly own: readonly Float64Array[];
  /** Columns of 72 numbers; column j is driven by the same standard normal number in every tube of the palette. */
  readonly shared: readonly Float64Array[];
}

/** What the equations miss: a smooth random curve in ln(K/S), afresh for each mixture. */
export interface Discrepancy {
  /** Standard deviation of ln(K/S) at each grid wavelength. */
  readonly sdLnKS: Spectrum;
  /** Correlation exp(-(dlambda/correlationNm)^2 / 2). */
  readonly correlationNm: number;
  /** Standard deviation of surface haze from film to film, reflectance factor, the same at every wavelength; absent: 0. */
  readonly sdHaze?: number;
}
