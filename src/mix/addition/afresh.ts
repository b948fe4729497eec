import type { MixingPalette } from '../../fit/palette.ts';
import type { Masses } from '../film-stack.ts';
import { type MatchOptions, matchColour } from '../match/match-colour.ts';
import type { Wanted } from '../match/wanted.ts';

/** Mixing the colour afresh instead of adding to the pile. */
export interface Afresh {
  readonly masses: Masses;
  readonly grams: number;
  readonly deltaE00: number;
  /** True when it takes less paint than the addition and comes as near. */
  readonly wastesLess: boolean;
}

/** A fresh mix may be this much farther off and still count as near as the addition, CIEDE2000. */
const AS_NEAR = 0.1;

/**
 * Adding leaves pile + added - wanted over; starting afresh leaves the pile. So adding wastes less exactly when what is
 * added is less than what is wanted.
 */
export function mixAfresh(
  palette: MixingPalette,
  target: Wanted,
  grams: number,
  options: MatchOptions,
  advised: { readonly grams: number; readonly deltaE00: number } | undefined,
): Afresh {
  const best = matchColour(palette, target, { ...options, count: 1, grams }).recipes[0]!;
  const wastesLess =
    advised !== undefined && advised.grams > grams && best.deltaE00 <= advised.deltaE00 + AS_NEAR;
  return { masses: best.masses, grams, deltaE00: best.deltaE00, wastesLess };
}
