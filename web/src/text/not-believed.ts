import type { FitResult } from '../../../server/api/fits.ts';
import { num } from './numbers.ts';
import { said } from './said.ts';
import { tubeFactsWords } from './tube-facts.ts';

type NotBelieved = FitResult['tubes'][number]['notBelieved'][number];

/** Why a rung was left out of a fit, in the language of the page. */
export function notBelievedSays({
  name,
  weighed,
  readsLike,
  probability,
  swapped,
  sentence,
}: NotBelieved): string {
  const t = tubeFactsWords();
  if (weighed === null || readsLike === null) return `${said(sentence)} ${t.leftOut(name)}`;
  const chance = num(Math.min(99.9, Math.floor(1000 * (probability ?? 0)) / 10), 1);
  const ratio = (parts: number): string =>
    parts < 1 ? `${num(1 / parts, 1)}:1` : `1:${num(parts, parts < 10 ? 1 : 0)}`;
  return (swapped ? t.swapped : t.wrong)(name, ratio(readsLike), ratio(weighed), chance);
}
