/** What a mixture will read: its K and S, the opaque or the finite film, then the surface of the geometry. */
import { GRID_SIZE, type Spectrum, spectrumFrom } from '../colour/grid.ts';
import { type LabRegion, labRegion } from './lab-region.ts';
import { discrepancyColumns } from './discrepancy.ts';
import { frameColumns } from './frame-doubt.ts';
import { filmReflectance } from './optics/finite-film.ts';
import { reflectanceLogSlope, reflectanceOfKOverS } from './optics/kubelka-munk.ts';
import { surfaceForward, surfaceInverse, surfaceSlope } from './optics/surface.ts';
import { type MixtureConstants, mixtureConstants } from './mixture.ts';
import { type MixingPalette, tubeOf } from './palette.ts';

/** A film that hides, or one of thickness X (units of the white's scattering) over a bare card as it is read. */
export type PredictedFilm = 'opaque' | { readonly X: number; readonly backing: Spectrum };

export interface PredictedReflectance {
  /** Internal reflectance, 0..1, on the grid. */
  readonly internal: Spectrum;
  /** Reflectance factor as the geometry reads it, on the grid. */
  readonly measured: Spectrum;
}

/** The same with its slopes, for searches: d(measured)/dK, d(measured)/dS of the mixture, and by ln X. */
export interface PredictedSlopes extends PredictedReflectance, MixtureConstants {
  readonly dK: Spectrum;
  readonly dS: Spectrum;
  readonly dLnX: Spectrum;
  /** A finite film's card as it is read bare, and d(internal)/d(Rg) of the film over it. */
  readonly card?: { readonly measured: Spectrum; readonly dRg: Spectrum };
}

export interface PredictionWithCovariance extends PredictedReflectance {
  /** Columns of 36 numbers: Cov(measured) = F F^T, from the tubes' own doubt, the shared one, and the discrepancy. */
  readonly factor: readonly Float64Array[];
  /** The colour with its 95 % region, D65/10deg. */
  readonly labRegion: LabRegion;
}

/** Prediction with slopes. @throws RangeError as sharesOf does, or for a card that the surface cannot read. */
export function predictSlopes(
  palette: MixingPalette,
  masses: Readonly<Record<string, number>>,
  film: PredictedFilm = 'opaque',
): PredictedSlopes {
  const { K, S, parts } = mixtureConstants(palette, masses);
  const internal = new Float64Array(GRID_SIZE);
  const measured = new Float64Array(GRID_SIZE);
  const dK = new Float64Array(GRID_SIZE);
  const dS = new Float64Array(GRID_SIZE);
  const dLnX = new Float64Array(GRID_SIZE);
  const dRg = new Float64Array(GRID_SIZE);
  const backing = film === 'opaque' ? undefined : spectrumFrom(film.backing);
  for (let i = 0; i < GRID_SIZE; i++) {
    if (film === 'opaque') {
      const R = reflectanceOfKOverS(K[i]! / S[i]!);
      const slope = reflectanceLogSlope(R) * surfaceSlope(palette.surface, R);
      internal[i] = R;
      dK[i] = slope / K[i]!;
      dS[i] = -slope / S[i]!;
    } else {
      const Rg = surfaceInverse(palette.surface, backing![i]!);
      const at = filmReflectance(K[i]!, S[i]!, film.X, Rg);
      const slope = surfaceSlope(palette.surface, at.R);
      internal[i] = at.R;
      dRg[i] = at.dRg;
      dK[i] = at.dK * slope;
      dS[i] = at.dS * slope;
      dLnX[i] = at.dLnX * slope;
    }
    measured[i] = surfaceForward(palette.surface, internal[i]!);
  }
  const card = backing ? { card: { measured: backing, dRg } } : {};
  return { internal, measured, K, S, parts, dK, dS, dLnX, ...card };
}

/** Predicted reflectance of a mixture. Masses per tube id in any one unit: only their ratios count. */
export function predictReflectance(
  palette: MixingPalette,
  masses: Readonly<Record<string, number>>,
  film: PredictedFilm = 'opaque',
): PredictedReflectance {
  const { internal, measured } = predictSlopes(palette, masses, film);
  return { internal, measured };
}

/**
 * Prediction with its covariance. `sdLnX` is the doubt in a finite film's ln thickness, where there is one.
 */
export function predictWithCovariance(
  palette: MixingPalette,
  masses: Readonly<Record<string, number>>,
  film: PredictedFilm = 'opaque',
  options: { readonly sdLnX?: number } = {},
): PredictionWithCovariance {
  const at = predictSlopes(palette, masses, film);
  const tubes = at.parts.map((part) => ({ ...part, tube: tubeOf(palette, part.id) }));
  const factor: Float64Array[] = [];
  const add = (into: Float64Array, column: Float64Array, gK: Float64Array, gS: Float64Array): void => {
    for (let i = 0; i < GRID_SIZE; i++) into[i]! += gK[i]! * column[i]! + gS[i]! * column[GRID_SIZE + i]!;
  };
  const sharedCount = Math.max(0, ...tubes.map(({ tube }) => tube.shared.length));
  const shared = Array.from({ length: sharedCount }, () => new Float64Array(GRID_SIZE));
  for (const { tube, K, S } of tubes) {
    const gK = at.dK.map((d, i) => d * K[i]!);
    const gS = at.dS.map((d, i) => d * S[i]!);
    for (const column of tube.own) {
      const into = new Float64Array(GRID_SIZE);
      add(into, column, gK, gS);
      factor.push(into);
    }
    tube.shared.forEach((column, j) => add(shared[j]!, column, gK, gS));
  }
  for (const [j, column] of frameColumns(palette, at)) {
    if (j < sharedCount) for (let i = 0; i < GRID_SIZE; i++) shared[j]![i]! += column[i]!;
  }
  factor.push(...shared);
  // A deviation d in ln(K/S) at constant K S: half of it in ln K, half taken from ln S.
  const byLnKS = at.dK.map((d, i) => (d * at.K[i]! - at.dS[i]! * at.S[i]!) / 2);
  for (const column of discrepancyColumns(palette.discrepancy)) {
    factor.push(column.map((d, i) => d * byLnKS[i]!));
  }
  const { sdHaze } = palette.discrepancy;
  if (sdHaze) factor.push(new Float64Array(GRID_SIZE).fill(sdHaze));
  const { sdLnX } = options;
  if (sdLnX) factor.push(at.dLnX.map((d) => d * sdLnX));
  return { internal: at.internal, measured: at.measured, factor, labRegion: labRegion(at.measured, factor) };
}
