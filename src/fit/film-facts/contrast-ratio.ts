/**
 * Contrast ratio: Y over black divided by Y over white, of what the instrument reads (not of internal reflectance),
 * D65/10deg. ISO 6504-3 and ASTM D2805 take 0.98 for full hiding.
 */
import { DEFAULT_WHITE } from '../../colour/illuminant.ts';
import { tristimulusWeights, xyzOf } from '../../colour/tristimulus.ts';
import { withDoubt } from '../doubt.ts';
import type { MixingPalette } from '../palette.ts';
import { predictReflectance } from '../predict.ts';
import { SEALED_CARD } from './card.ts';
import { type HidingScope, hidingScope } from './hiding-scope.ts';
import { type FilmThickness, thicknessX } from './thickness.ts';

/** Two-sided 95 % of the normal distribution. */
export const NORMAL_95_TWO_SIDED = 1.96;
/** Step in ln X for slopes by differences. */
const STEP = 1e-3;

/** Contrast ratio, 0..1, of a tube's film of thickness X (white-scattering units) over a sealed card. */
export function contrastRatio(palette: MixingPalette, id: string, X: number): number {
  const weights = tristimulusWeights(DEFAULT_WHITE);
  const over = (backing: Float64Array): number =>
    xyzOf(predictReflectance(palette, { [id]: 1 }, { X, backing }).measured, weights).Y;
  return over(SEALED_CARD.black) / over(SEALED_CARD.white);
}

/** d(contrast ratio)/d(ln X). */
export function contrastSlope(palette: MixingPalette, id: string, X: number): number {
  const rise =
    contrastRatio(palette, id, X * Math.exp(STEP)) - contrastRatio(palette, id, X * Math.exp(-STEP));
  return rise / (2 * STEP);
}

export interface ContrastAtThickness {
  readonly value: number;
  /** The truth lies between these 95 times in 100; both within 0..1. */
  readonly low: number;
  readonly high: number;
  readonly scope: HidingScope;
}

/**
 * Contrast ratio of a tube's masstone at a stated thickness, with what the constants and the thickness leave open. The
 * interval is taken in ln(C/(1-C)), so that it ends short of 0 and 1.
 * @throws RangeError for a tube that is not in the palette or a thickness that is not above 0.
 */
export function contrastAtThickness(
  palette: MixingPalette,
  id: string,
  thickness: FilmThickness,
): ContrastAtThickness {
  const { X, sdLnX } = thicknessX(thickness);
  const { value, sd } = withDoubt(palette, [id, palette.white], (p) => contrastRatio(p, id, X));
  const whole = Math.hypot(sd, sdLnX * contrastSlope(palette, id, X));
  const odds = Math.log(value / (1 - value));
  const sdOdds = whole / (value * (1 - value));
  const at = (z: number): number => 1 / (1 + Math.exp(-(odds + z * sdOdds)));
  return {
    value,
    low: value < 1 ? at(-NORMAL_95_TWO_SIDED) : 1,
    high: value < 1 ? at(NORMAL_95_TWO_SIDED) : 1,
    scope: hidingScope(palette, id),
  };
}
