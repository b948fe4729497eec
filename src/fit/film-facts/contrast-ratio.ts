/**
 * Contrast ratio: Y over black divided by Y over white, of what the instrument reads (not of internal reflectance),
 * D65/10deg. ISO 6504-3 and ASTM D2805 take 0.98 for full hiding.
 */
import { type Slopes, combinedOfOneFilm, sdOf } from '../doubt.ts';
import { luminanceAlone, luminanceOf } from '../luminance.ts';
import type { MixingPalette } from '../palette.ts';
import { sealedCard } from './card.ts';
import { type HidingScope, hidingScope } from './hiding-scope.ts';
import { type FilmThickness, thicknessX } from './thickness.ts';

/** Two-sided 95 % of the normal distribution. */
export const NORMAL_95_TWO_SIDED = 1.96;

export interface Contrast {
  /** 0..1 */
  readonly value: number;
  readonly slopes: Slopes;
  /** d(value)/d(ln X). */
  readonly byLnX: number;
}

/** Contrast ratio of a tube's film of thickness X (white-scattering units) over a sealed card, with its slopes. */
export function contrastOf(palette: MixingPalette, id: string, X: number): Contrast {
  const card = sealedCard(palette.surface);
  const over = (backing: Float64Array) => luminanceOf(palette, { [id]: 1 }, { X, backing });
  const black = over(card.black);
  const white = over(card.white);
  const value = black.Y / white.Y;
  return {
    value,
    slopes: combinedOfOneFilm([1 / white.Y, black.slopes], [-value / white.Y, white.slopes]),
    byLnX: (black.byLnX - value * white.byLnX) / white.Y,
  };
}

/** The value alone, for a search that asks for many. */
export function contrastRatio(palette: MixingPalette, id: string, X: number): number {
  const card = sealedCard(palette.surface);
  const over = (backing: Float64Array) => luminanceAlone(palette, { [id]: 1 }, { X, backing });
  return over(card.black) / over(card.white);
}

export interface ContrastAtThickness {
  readonly value: number;
  /** The truth lies between these 95 times in 100; both within 0..1. */
  readonly low: number;
  readonly high: number;
  readonly scope: HidingScope;
}

/**
 * Contrast ratio of a tube's masstone at a stated thickness, with what the constants, the equations and the thickness
 * leave open. The interval is taken in ln(C/(1-C)), so that it ends short of 0 and 1.
 * @throws RangeError for a tube that is not in the palette or a thickness that is not above 0.
 */
export function contrastAtThickness(
  palette: MixingPalette,
  id: string,
  thickness: FilmThickness,
): ContrastAtThickness {
  const { X, sdLnX } = thicknessX(thickness);
  const { value, slopes, byLnX } = contrastOf(palette, id, X);
  const whole = Math.hypot(sdOf(palette, slopes), sdLnX * byLnX);
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
