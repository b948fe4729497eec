import type { ColourSplit } from '../../../src/mix/match/difference.ts';
import { num } from './numbers.ts';
import { words } from './words.ts';

const differenceWords = words(
  {
    kept: 'value, chroma and hue kept',
    valueKept: 'value kept',
    lighter: (v: string) => `lighter by ${v} of value`,
    darker: (v: string) => `darker by ${v} of value`,
    stronger: (v: string) => `stronger by ${v}`,
    greyer: (v: string) => `greyer by ${v}`,
    warmer: (v: string) => `warmer by ${v}`,
    cooler: (v: string) => `cooler by ${v}`,
    hue: (v: string) => `hue turned by ${v}`,
  },
  {
    kept: 'Tonwert, Buntheit und Farbton gehalten',
    valueKept: 'Tonwert gehalten',
    lighter: (v) => `um ${v} Tonwert heller`,
    darker: (v) => `um ${v} Tonwert dunkler`,
    stronger: (v) => `um ${v} bunter`,
    greyer: (v) => `um ${v} grauer`,
    warmer: (v) => `um ${v} wärmer`,
    cooler: (v) => `um ${v} kühler`,
    hue: (v) => `Farbton um ${v} gedreht`,
  },
);

/** Below these a part of a difference cannot be told side by side. Our choice. */
const VALUE_KEPT = 0.05;
const COLOUR_KEPT = 0.75;

/** A difference in a painter's parts, value first: "lighter by 0.12 of value, warmer by 2.1". */
export function splitWords(split: ColourSplit): string {
  const t = differenceWords();
  const parts: string[] = [];
  const { value, chroma, hue, lean } = split;
  if (Math.abs(value) >= VALUE_KEPT) parts.push((value > 0 ? t.lighter : t.darker)(num(Math.abs(value), 2)));
  if (Math.abs(lean) >= COLOUR_KEPT) parts.push((lean > 0 ? t.warmer : t.cooler)(num(Math.abs(lean), 1)));
  if (Math.abs(chroma) >= COLOUR_KEPT)
    parts.push((chroma > 0 ? t.stronger : t.greyer)(num(Math.abs(chroma), 1)));
  if (Math.abs(hue) >= COLOUR_KEPT && Math.abs(lean) < COLOUR_KEPT) parts.push(t.hue(num(Math.abs(hue), 1)));
  if (parts.length === 0) return t.kept;
  return Math.abs(value) < VALUE_KEPT ? [t.valueKept, ...parts].join(', ') : parts.join(', ');
}
