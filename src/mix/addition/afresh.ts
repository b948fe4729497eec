import type { MixingPalette } from '../../fit/palette.ts';
import type { Masses } from '../film-stack.ts';
import { type MatchOptions, matchColour } from '../match/match-colour.ts';
import type { Wanted } from '../match/wanted.ts';
import { asMade, pourMatch } from '../pour/pour-match.ts';
import type { PreTint } from '../pour/pre-tint.ts';
import { type Scale, canPour } from '../pour/scale.ts';

/** Mixing the colour afresh instead of adding to the pile. */
export interface Afresh {
  /** Grams by tube id, besides the pre-tints. */
  readonly masses: Masses;
  /** What is let down first, where a scale was given and that is worth it. */
  readonly preTints: readonly PreTint[];
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
  options: MatchOptions & { readonly scale?: Scale },
  advised: { readonly grams: number; readonly deltaE00: number } | undefined,
): Afresh {
  const best = freshMix(palette, target, grams, options);
  const wastesLess =
    advised !== undefined && advised.grams > grams && best.deltaE00 <= advised.deltaE00 + AS_NEAR;
  return { ...best, grams, wastesLess };
}

/** The best fresh mix, in the scale's steps where there is one that can pour it. */
function freshMix(
  palette: MixingPalette,
  target: Wanted,
  grams: number,
  { scale, ...options }: MatchOptions & { readonly scale?: Scale },
): Pick<Afresh, 'masses' | 'preTints' | 'deltaE00'> {
  const asked = { ...options, count: 1, grams };
  if (!scale || !canPour(grams, scale)) {
    const { masses, deltaE00 } = matchColour(palette, target, asked).recipes[0]!;
    return { masses, preTints: [], deltaE00 };
  }
  const { pour } = pourMatch(palette, target, { ...asked, grams, scale }).recipes[0]!;
  const { masses, deltaE00 } = asMade(pour);
  return { masses, preTints: pour.preTint?.tints ?? [], deltaE00 };
}
