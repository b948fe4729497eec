/** From an English sentence back to its code and values, by the same catalogues that said it. */
import { SLOT, type Catalogue } from './catalogue.ts';
import { WORDS } from './words.ts';

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

const WORD = WORDS.toSorted((a, b) => b.length - a.length)
  .map(escaped)
  .join('|');
const BY_KIND: Readonly<Record<SlotKind, string>> = {
  name: '(.+?)',
  figure: '(an unmeasurable share|[^;]*?\\d[^;]*?|[-−]?Infinity|NaN)',
  word: `(${WORD})`,
  said: '(.*?)',
  list: '(.*?)',
};

/** @returns a function that is quick for a sentence heard before */
export function recogniser(catalogues: readonly Catalogue[]): (sentence: string) => Recognised | undefined {
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
  for (const { code, names, kinds, expression } of patterns) {
    const found = expression.exec(sentence);
    if (found)
      return { code, kinds, values: Object.fromEntries(names.map((n, i) => [n, found[i + 1] ?? ''])) };
  }
  return undefined;
}

function patternsOf({ name, templates }: Catalogue): Pattern[] {
  return Object.entries(templates).map(([code, template]) => {
    const names: string[] = [];
    const kinds: Record<string, SlotKind> = {};
    let expression = '';
    let fixed = 0;
    let at = 0;
    for (const slot of template.matchAll(SLOT)) {
      const between = template.slice(at, slot.index);
      const kind = (slot[2] ?? 'name') as SlotKind;
      expression += escaped(between) + BY_KIND[kind];
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
