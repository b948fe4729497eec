import type { ColourAnswer } from '../../../server/api/words.ts';
import type { WhiteName } from '../../../src/colour/illuminant.ts';
import type { Patch } from './patch.ts';

/** A colour as the server states it, as a patch. */
export function patchOfAnswer(colour: ColourAnswer): Patch {
  const white: WhiteName = `${colour.white.illuminant}/${colour.white.observer}`;
  return { lab: { ...colour.Lab, white }, value: colour.value };
}
