/** From an English sentence back to its code and values, by the same catalogues that said it. */
import { SLOT, type Sentences } from './catalogue.ts';
import { isWord, WORDS } from './words.ts';

export type SlotKind = 'name' | 'figure' | 'word' | 'said' | 'list';

/** A sentence of a catalogue: what was said, and with which values. */
export interface Recognised {
  /** `catalogue.code`, which does not change when the English is said better. */
  readonly code: string;
  readonly values: Readonly<Record<string, string>>;
  /** What each value is. */
  readonly kinds: Readonly<Record<string, SlotKind>>;
}

interface Pattern {
  readonly code: string;
  readonly names: readonly string[];
  readonly kinds: Readonly<Record<string, SlotKind>>;
  readonly expression: RegExp;
  /** Letters that are not values: the more, the surer. */
  readonly fixed: number;
}

/** With fewer letters of its own a sentence says little, and takes only what a catalogue says as its values. */
const THIN = 10;

const WORD = WORDS.toSorted((a, b) => b.length - a.length)
  .map(escaped)
  .join('|');
const UNIT = '(?: ?(?:%|g|K|nm|um|mm|ms|s|CIEDE2000))?';
const NUMBER = `[-−+]?(?:\\d[\\d.]*(?:e[-+]?\\d+)?|Infinity|NaN)${UNIT}`;
const BY_KIND: Readonly<Record<SlotKind, string>> = {
  name: '(.+?)',
  figure: `(an unmeasurable share|${NUMBER}(?:, ${NUMBER})*)`,
  word: `(${WORD})`,
  said: '(.*?)',
  list: '(.*?)',
};

/** @returns a function that is quick for a sentence heard before */
export function recogniser(catalogues: readonly Sentences[]): (sentence: string) => Recognised | undefined {
  // The surest first, so that a general sentence never takes a special one's place.
  const patterns = catalogues.flatMap(patternsOf).toSorted((a, b) => b.fixed - a.fixed);
  const heard = new Map<string, Recognised | undefined>();
  return (sentence) => {
    if (heard.has(sentence)) return heard.get(sentence);
    const found = recognise(patterns, sentence);
    if (heard.size > 2000) heard.clear();
    heard.set(sentence, found);
    return found;
  };
}

function recognise(patterns: readonly Pattern[], sentence: string): Recognised | undefined {
  for (const { code, names, kinds, expression, fixed } of patterns) {
    const found = expression.exec(sentence);
    if (!found) continue;
    const values = Object.fromEntries(names.map((n, i) => [n, found[i + 1] ?? '']));
    if (fixed < THIN && !names.every((n) => isSaid(patterns, values[n]!, kinds[n]!))) continue;
    return { code, kinds, values };
  }
  return undefined;
}

/** True for a value that is not said, too. */
function isSaid(patterns: readonly Pattern[], value: string, kind: SlotKind): boolean {
  const known = (text: string): boolean => isWord(text) || recognise(patterns, text) !== undefined;
  if (kind === 'said') return known(value);
  return kind !== 'list' || value.split('; ').every(known);
}

function patternsOf({ name, templates }: Sentences): Pattern[] {
  return Object.entries(templates).map(([code, template]) => {
    const names: string[] = [];
    const kinds: Record<string, SlotKind> = {};
    let expression = '';
    let fixed = 0;
    let at = 0;
    for (const slot of template.matchAll(SLOT)) {
      const between = template.slice(at, slot.index);
      const kind = (slot[2] ?? 'name') as SlotKind;
      // Two values with a mere blank between them: the first takes all the words but the last.
      const close = template.startsWith(' {', slot.index + slot[0].length);
      expression += escaped(between) + (close && kind === 'name' ? '(.+)' : BY_KIND[kind]);
      fixed += between.length;
      names.push(slot[1]!);
      kinds[slot[1]!] = kind;
      at = slot.index + slot[0].length;
    }
    const rest = template.slice(at);
    expression += escaped(rest);
    return {
      code: `${name}.${code}`,
      names,
      kinds,
      expression: new RegExp(`^${expression}$`, 's'),
      fixed: fixed + rest.length,
    };
  });
}

function escaped(text: string): string {
  return text.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
