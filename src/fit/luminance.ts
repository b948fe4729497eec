/** Luminous reflectance Y of a mixture with its slopes, so that doubts of hiding and strength cost two predictions. */
import { GRID_SIZE } from '../colour/grid.ts';
import { DEFAULT_WHITE } from '../colour/illuminant.ts';
import { tristimulusWeights } from '../colour/tristimulus.ts';
import type { Slopes } from './doubt.ts';
import { frameColumns } from './frame-doubt.ts';
import type { MixingPalette } from './palette.ts';
import { type PredictedFilm, predictSlopes } from './predict.ts';

export interface Luminance {
  /** D65/10deg, 0..100. */
  readonly Y: number;
  readonly slopes: Slopes;
  /** dY/d(ln X) of a finite film. */
  readonly byLnX: number;
}

/** @throws RangeError as `predictSlopes` does. */
export function luminanceOf(
  palette: MixingPalette,
  masses: Readonly<Record<string, number>>,
  film: PredictedFilm = 'opaque',
): Luminance {
  const { y } = tristimulusWeights(DEFAULT_WHITE);
  const at = predictSlopes(palette, masses, film);
  let Y = 0;
  let byLnX = 0;
  const afresh = new Float64Array(GRID_SIZE);
  for (let i = 0; i < GRID_SIZE; i++) {
    Y += y[i]! * at.measured[i]!;
    byLnX += y[i]! * at.dLnX[i]!;
    // A deviation in ln(K/S) at constant K S: half of it in ln K, half taken from ln S.
    afresh[i] = (y[i]! * (at.dK[i]! * at.K[i]! - at.dS[i]! * at.S[i]!)) / 2;
  }
  const tubes = new Map(
    at.parts.map(({ id, K, S }) => [
      id,
      Float64Array.from({ length: 2 * GRID_SIZE }, (_, k) =>
        k < GRID_SIZE
          ? y[k]! * at.dK[k]! * K[k]!
          : y[k - GRID_SIZE]! * at.dS[k - GRID_SIZE]! * S[k - GRID_SIZE]!,
      ),
    ]),
  );
  const frame = new Map(
    frameColumns(palette, at).map(([j, column]) => [j, column.reduce((sum, v, i) => sum + y[i]! * v, 0)]),
  );
  return { Y, slopes: { tubes, afresh: [afresh], frame }, byLnX };
}

/** Y without its slopes, 0..100. @throws RangeError as `predictSlopes` does. */
export function luminanceAlone(
  palette: MixingPalette,
  masses: Readonly<Record<string, number>>,
  film: PredictedFilm = 'opaque',
): number {
  const { y } = tristimulusWeights(DEFAULT_WHITE);
  return predictSlopes(palette, masses, film).measured.reduce((sum, R, i) => sum + y[i]! * R, 0);
}
