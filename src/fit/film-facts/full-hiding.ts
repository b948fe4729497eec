import { type WithDoubt, withDoubt } from '../doubt.ts';
import { FULL_HIDING } from '../hiding-thickness.ts';
import type { MixingPalette } from '../palette.ts';
import { NORMAL_95_TWO_SIDED, contrastRatio, contrastSlope } from './contrast-ratio.ts';

/** ln X between which full hiding is sought. */
const THINNEST = Math.log(1e-4);
const THICKEST = Math.log(1e5);

/** Thickness (white-scattering units) at which the contrast ratio is 0.98, by bisection on ln X. */
export function fullHidingX(palette: MixingPalette, id: string): number {
  let low = THINNEST;
  let high = THICKEST;
  for (let i = 0; i < 60; i++) {
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
  const slope = contrastSlope(palette, id, X);
  const { sd } = withDoubt(palette, [id, palette.white], (p) => contrastRatio(p, id, X) / slope);
  return {
    X,
    low: X * Math.exp(-NORMAL_95_TWO_SIDED * sd),
    high: X * Math.exp(NORMAL_95_TWO_SIDED * sd),
  };
}

/** Full-hiding thickness of one tube over another's; doubts they share (the white's) count once. */
export function fullHidingRatio(palette: MixingPalette, olderId: string, newerId: string): WithDoubt {
  const at = (id: string): { X: number; slope: number } => {
    const X = fullHidingX(palette, id);
    return { X, slope: contrastSlope(palette, id, X) };
  };
  const older = at(olderId);
  const newer = at(newerId);
  const lnRatio = withDoubt(
    palette,
    [olderId, newerId, palette.white],
    (p) =>
      contrastRatio(p, olderId, older.X) / older.slope - contrastRatio(p, newerId, newer.X) / newer.slope,
  );
  const value = newer.X / older.X;
  return { value, sd: value * lnRatio.sd };
}
