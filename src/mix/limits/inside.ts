import type { MixingPalette } from '../../fit/palette.ts';
import type { Masses } from '../film-stack.ts';
import { type ColourSplit, splitDifference } from '../match/difference.ts';
import { REACHED_DELTA_E00 } from '../match/match-colour.ts';
import { type Wanted, wantedColour, whiteOfWanted } from '../match/wanted.ts';
import { differenceGoal, quadraticGoal } from '../search/goal.ts';
import { type TubeSetOptions, tubeSet } from '../tube-set.ts';
import type { WhiteName } from '../../colour/illuminant.ts';
import { edgeSearch } from './edge-search.ts';

/** Whether a colour can be mixed, by mixing it. */
export interface Reach {
  readonly inside: boolean;
  /** CIEDE2000 to the nearest mix. */
  readonly deltaE00: number;
  readonly split: ColourSplit;
  /** The nearest mix, shares by mass; of any number of tubes. */
  readonly shares: Masses;
}

/** A colour counts as inside when some mix of the tubes is nearer than `within` (CIEDE2000). */
export function reachOf(
  palette: MixingPalette,
  target: Wanted,
  options: TubeSetOptions<WhiteName> & { readonly within?: number } = {},
): Reach {
  const white = whiteOfWanted(target, options.white);
  const wanted = wantedColour(target, 'evenly', white);
  const edge = edgeSearch(tubeSet(palette, { ...options, white }));
  const near = edge.reach(quadraticGoal(wanted.channels));
  const at = near.cost < 1e-6 ? near : edge.reach(differenceGoal(wanted.channels), near.x);
  const { lab, shares } = edge.mixOf(at.x);
  const split = splitDifference(wanted.lab, lab);
  return {
    inside: split.deltaE00 <= (options.within ?? REACHED_DELTA_E00),
    deltaE00: split.deltaE00,
    split,
    shares,
  };
}
