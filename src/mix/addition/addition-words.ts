import { type MixingPalette, labelOf } from '../../fit/palette.ts';
import type { Masses } from '../film-stack.ts';
import type { ColourSplit } from '../match/difference.ts';
import { type Scale, scaleSteps } from '../pour/scale.ts';
import { say } from '../sentences.ts';
import type { KnownPile } from './pile.ts';

export interface AdditionFound {
  readonly known: Pick<KnownPile, 'grams'>;
  /** The pile as it is. */
  readonly now: ColourSplit;
  readonly advised:
    { readonly add: Masses; readonly deltaE00: number; readonly split: ColourSplit } | undefined;
  /** CIEDE2000 that is near enough. */
  readonly near: number;
  readonly nearEnough: boolean;
  readonly startAfresh: boolean;
  readonly scale?: Scale;
  /** The least exact addition that counts, where some would help. */
  readonly exact?: Masses;
}

/** What to add to a pile, in one or two sentences. */
export function additionSentence(palette: MixingPalette, found: AdditionFound): string {
  const { known, now, advised, near, nearEnough, startAfresh, scale, exact } = found;
  if (nearEnough) return say('pile-near-enough', { deltaE: now.deltaE00.toFixed(2) });
  const digits = scale ? Math.max(2, Math.ceil(-Math.log10(scale.resolution) - 1e-9)) : 2;
  const list = (add: Masses, places: number): string =>
    Object.entries(add)
      .map(([id, g]) => say('grams-tube', { grams: g.toFixed(places), tube: labelOf(palette, id) }))
      .join(', ');
  if (!advised) {
    return scale && exact
      ? say('nothing-weighable', { list: list(exact, digits + 1), smallest: scaleSteps(scale).smallestPour })
      : say('nothing-nearer', { split: now.sentence });
  }
  const then =
    advised.deltaE00 <= near ? say('near-enough') : say('still', { split: advised.split.sentence });
  const waste = startAfresh ? say('waste', { grams: known.grams.toFixed(1) }) : '';
  return say('add', {
    list: list(advised.add, digits),
    verdict: then,
    deltaE: advised.deltaE00.toFixed(2),
    waste,
  });
}
