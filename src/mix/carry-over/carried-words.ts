import type { ColourSplit } from '../match/difference.ts';
import type { PourChange } from './carry-recipe.ts';
import { say } from '../sentences.ts';

/** `kept`: nobody tells the two apart; `near`: seen edge to edge only; `out of reach`: plainly another colour. */
export type CarriedOutcome = 'kept' | 'near' | 'out of reach';

/** CIEDE2000 up to which the colour counts as kept, and as near. Common practice, no source: 1 is about just visible. */
export const KEPT_DELTA_E00 = 0.3;
export const NEAR_DELTA_E00 = 1;

export function carriedOutcome(deltaE00: number): CarriedOutcome {
  if (deltaE00 <= KEPT_DELTA_E00) return 'kept';
  return deltaE00 <= NEAR_DELTA_E00 ? 'near' : 'out of reach';
}

/** What happened to a recipe, in one or two plain sentences. */
export function carriedSentence(
  outcome: CarriedOutcome,
  split: ColourSplit,
  changes: readonly PourChange[],
  nameOf: (id: string) => string,
): string {
  const pours = changes.flatMap((c) => pourWords(c, nameOf) ?? []);
  const change = pours.length > 0 ? pours.join('; ') : say('no-pour-changes');
  switch (outcome) {
    case 'kept':
      return say('kept', { change });
    case 'near':
      return say('near', { deltaE: split.deltaE00.toFixed(1), split: split.sentence, change });
    case 'out of reach':
      return say('out-of-reach', { deltaE: split.deltaE00.toFixed(1), split: split.sentence, change });
  }
}

/** A pour is said to change from this share of it on. Common practice, no source: what a knife does. */
const SAID = 0.01;

function pourWords(
  { tube: id, before, gramsBefore, grams }: PourChange,
  nameOf: (id: string) => string,
): string | undefined {
  const tube = nameOf(id);
  const was =
    before === id
      ? `${gramsBefore.toFixed(2)} g`
      : say('grams-of', { grams: gramsBefore.toFixed(2), tube: nameOf(before) });
  if (grams === 0) return say('pour-none', { tube, was });
  if (id === before && Math.abs(grams - gramsBefore) < SAID * gramsBefore) return undefined;
  return say('pour', { grams: grams.toFixed(2), tube, was });
}
