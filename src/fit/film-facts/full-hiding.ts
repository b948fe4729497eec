import { type WithDoubt, combined, sdOf } from '../doubt.ts';
import { FULL_HIDING } from '../hiding-thickness.ts';
import type { MixingPalette } from '../palette.ts';
import { NORMAL_95_TWO_SIDED, contrastOf, contrastRatio } from './contrast-ratio.ts';

/** ln X between which full hiding is sought. */
const THINNEST = Math.log(1e-4);
const THICKEST = Math.log(1e5);

/** Thickness (white-scattering units) at which the contrast ratio is 0.98, by bisection on ln X. */
export function fullHidingX(palette: MixingPalette, id: string): number {
  let low = THINNEST;
  let high = THICKEST;
  for (let i = 0; i < 40; i++) {
    const mid = (low + high) / 2;
    if (contrastRatio(palette, id, Math.exp(mid)) < FULL_HIDING) low = mid;
    else high = mid;
  }
  return Math.exp((low + high) / 2);
}

export interface FullHiding {
  /** White-scattering units, with the bounds that hold the truth 95 times in 100. */
  readonly X: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Thickness for a contrast ratio of 0.98. Its doubt by the implicit function: where constants move the contrast at X by
 * dC, ln X moves by -dC / (dC/dln X), which spares a search for every column of doubt.
 */
export function fullHiding(palette: MixingPalette, id: string): FullHiding {
  const X = fullHidingX(palette, id);
  const { slopes, byLnX } = contrastOf(palette, id, X);
  const sd = sdOf(palette, slopes) / byLnX;
  return {
    X,
    low: X * Math.exp(-NORMAL_95_TWO_SIDED * sd),
    high: X * Math.exp(NORMAL_95_TWO_SIDED * sd),
  };
}

/** Full-hiding thickness of one tube over another's; doubts they share (the white's) count once. */
export function fullHidingRatio(palette: MixingPalette, olderId: string, newerId: string): WithDoubt {
  if (olderId === newerId) return { value: 1, sd: 0 };
  const olderX = fullHidingX(palette, olderId);
  const newerX = fullHidingX(palette, newerId);
  const older = contrastOf(palette, olderId, olderX);
  const newer = contrastOf(palette, newerId, newerX);
  const lnRatio = combined([1 / older.byLnX, older.slopes], [-1 / newer.byLnX, newer.slopes]);
  const value = newerX / olderX;
  return { value, sd: value * sdOf(palette, lnRatio) };
}
