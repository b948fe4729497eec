/** An English sentence of the program in German: by its code and values, never word by word. */
import { fill } from '../../../../src/sentence/catalogue.ts';
import { type SlotKind, recogniser } from '../../../../src/sentence/recognise.ts';
import { isWord } from '../../../../src/sentence/words.ts';
import { GERMAN } from './all.ts';
import { GERMAN_WORDS } from './words.ts';

const recognise = recogniser(GERMAN.map(({ of }) => of));
const TEMPLATES = new Map<string, string>(
  GERMAN.flatMap(({ of, said }) =>
    Object.entries(said).map(([code, text]) => [`${of.name}.${code}`, text] as const),
  ),
);

/** @returns undefined for a text that no catalogue knows: it is shown as it came */
export function inGerman(text: string): string | undefined {
  return oneInGerman(text) ?? severalInGerman(text, /(?<=[.!?”"]) (?=\S)/, ' ');
}

function oneInGerman(text: string): string | undefined {
  if (isWord(text)) return GERMAN_WORDS[text];
  const found = recognise(text) ?? recognise(text.charAt(0).toLowerCase() + text.slice(1));
  const template = found && TEMPLATES.get(found.code);
  if (!found || template === undefined) return undefined;
  const values = Object.entries(found.values).map(([name, value]) => [
    name,
    valueInGerman(value, found.kinds[name]!),
  ]);
  const said = fill(template, Object.fromEntries(values) as Record<string, string>);
  return /^[A-Z]/.test(text) ? said.charAt(0).toUpperCase() + said.slice(1) : said;
}

function valueInGerman(value: string, kind: SlotKind): string {
  switch (kind) {
    case 'name':
      return value;
    case 'figure':
      return isWord(value) ? GERMAN_WORDS[value] : value.replaceAll(/(\d)\.(?=\d)/g, '$1,');
    case 'word':
    case 'said':
      return inGerman(value) ?? value;
    case 'list':
      return (
        oneInGerman(value) ??
        severalInGerman(value, /; /, '; ') ??
        severalInGerman(value, /, /, ', ') ??
        severalInGerman(value, / and /, ' und ') ??
        value
      );
  }
}

/** Parts that are known, in the longest runs that are; the others as they came. Undefined where none is known. */
function severalInGerman(text: string, between: RegExp, join: string): string | undefined {
  const parts = text.split(between);
  if (parts.length < 2) return undefined;
  const out: string[] = [];
  let known = false;
  for (let i = 0; i < parts.length;) {
    let end = parts.length;
    let said: string | undefined;
    for (; end > i && said === undefined; end -= 1) {
      if (end - i < parts.length)
        said = oneInGerman(parts.slice(i, end).join(join === ' und ' ? ' and ' : join));
    }
    known ||= said !== undefined;
    out.push(said ?? parts[i]!);
    i = said === undefined ? i + 1 : end + 1;
  }
  return known ? out.join(join) : undefined;
}
