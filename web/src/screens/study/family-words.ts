/** What a family's recipe comes to, in words: the same on the screen and on paper. */
import { splitWords } from '../../text/differences.ts';
import { grams } from '../../text/numbers.ts';
import { studyWords } from '../../text/study.ts';
import { pourNotes } from '../mixing/pour-words.ts';
import type { FamilyRow } from './family-rows.ts';

/** About the least difference seen edge to edge, CIEDE2000. Common practice, no source. */
const JUST_VISIBLE = 1;
/** A pour may come out up to a tenth over what is needed; more than that was chosen, and is said. */
const GROWN = 1.12;

/** How near the mixture comes, and in what it differs; empty before there is a recipe. */
export function reachSays({ reached, recipe, poured }: FamilyRow): string {
  const t = studyWords();
  const mix = poured ? (poured.pour.preTint ?? poured.pour) : recipe;
  if (!mix || !recipe) return '';
  if (mix.deltaE00 < JUST_VISIBLE) return reached ? t.reached : `${t.nearly} ${splitWords(mix.split)}.`;
  return `${recipe.deltaE00 < JUST_VISIBLE ? t.byScale : t.notReached} ${splitWords(mix.split)}.`;
}

/** What weighing it on a scale of these steps (g) brings with it. */
export function pourSays({ poured }: FamilyRow, resolution: number): string[] {
  if (!poured) return [];
  const { pour, needed } = poured;
  const said = (g: number): string => grams(g, resolution);
  return [
    ...(pour.grams > GROWN * needed ? [studyWords().grown(said(needed), said(pour.grams))] : []),
    ...pourNotes(pour),
  ];
}
