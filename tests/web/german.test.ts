/** German of what the program says: complete, and found again from the English sentence alone. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Sentences, SLOT, fill } from '../../src/sentence/catalogue.ts';
import { recogniser, type SlotKind } from '../../src/sentence/recognise.ts';
import { WORDS } from '../../src/sentence/words.ts';
import { CATALOGUES } from '../../server/api/sentences/all.ts';
import { GERMAN } from '../../web/src/text/german/all.ts';
import { inGerman } from '../../web/src/text/german/translate.ts';

const ROOT = new URL('../../', import.meta.url);
const files = ['src', 'server'].flatMap((room) =>
  (readdirSync(new URL(room, ROOT), { recursive: true }) as string[])
    .filter((name) => name.endsWith('.ts'))
    .map((name) => `${room}/${name}`),
);
const source = new Map(files.map((file) => [file, readFileSync(new URL(file, ROOT), 'utf8')]));

const SAMPLE: Readonly<Record<SlotKind, string>> = {
  name: 'Cold blue 3',
  figure: '1.25',
  word: 'warmer',
  said: 'warmer',
  list: 'darker; greyer',
};
const slotsOf = (text: string): string[] => [...text.matchAll(SLOT)].map((slot) => slot[1]!).toSorted();
const filled = (template: string): { sentence: string; values: Record<string, string> } => {
  const values = Object.fromEntries(
    [...template.matchAll(SLOT)].map((slot) => [slot[1]!, SAMPLE[(slot[2] ?? 'name') as SlotKind]]),
  );
  return { sentence: fill(template, values), values };
};
const every = GERMAN.flatMap(({ of, said }) =>
  Object.entries(of.templates).map(([code, template]) => ({ of, code, template, german: said[code] ?? '' })),
);

describe('the catalogues of what the program says', () => {
  it('are all in German', async () => {
    const declared = [...source].filter(([, text]) => /= catalogue\(/.test(text)).map(([file]) => file);
    const made = await Promise.all(
      declared.map(async (file) => {
        const module = (await import(new URL(file, ROOT).href)) as Record<string, unknown>;
        return Object.values(module).find((x) => typeof (x as Sentences).templates === 'object') as Sentences;
      }),
    );
    expect(made.map((one) => one.name).toSorted()).toEqual(GERMAN.map(({ of }) => of.name).toSorted());
    expect(made.map((one) => one.name).toSorted()).toEqual(CATALOGUES.map((one) => one.name).toSorted());
  });

  it.each(GERMAN.map(({ of, said }) => [of.name, of, said] as const))(
    'give %s the same values in both languages',
    (_, of, said) => {
      for (const [code, template] of Object.entries(of.templates)) {
        // A word that only English needs, such as "is" and "are", may be left out.
        const words = [...template.matchAll(SLOT)].filter((s) => s[2] === 'word').map((s) => s[1]!);
        const wanted = slotsOf(template).filter((name) => !words.includes(name));
        expect(
          slotsOf(said[code]!).filter((name) => !words.includes(name)),
          code,
        ).toEqual(wanted);
        expect(slotsOf(template), code).toEqual(expect.arrayContaining(slotsOf(said[code]!)));
      }
    },
  );

  it('are told apart: every sentence is found again with its values', () => {
    const recognise = recogniser(GERMAN.map(({ of }) => of));
    for (const { of, code, template, german } of every) {
      const { sentence, values } = filled(template);
      const found = recognise(sentence);
      expect(found?.values, `${of.name}.${code}: ${sentence}`).toEqual(values);
      // Two rooms may say the same; then they say the same in German, too.
      const same = every.find((one) => `${one.of.name}.${one.code}` === found?.code);
      expect(same?.template, `${of.name}.${code}`).toBe(template);
      expect(same?.german, `${of.name}.${code}`).toBe(german);
    }
  });

  it('are said by every refusal that can reach a person', () => {
    const refusal =
      /(new (ReadingRefused\([^,()]+,|(Mix|Profile|SwatchSet|Exchange|Store)Problem\(|HttpProblem\(\s*\d+,)|[ .](notFound|conflict|unusable)\()\s*(['"]|`(?!\$\{error\.message\} ))/;
    const plain = [...source].filter(([, text]) => refusal.test(text)).map(([file]) => file);
    expect(plain).toEqual([]);
  });
});

describe('a sentence in German', () => {
  it.each([
    [
      'The white is 12 minutes old; read the white tile again.',
      'Das Weiß ist 12 Minuten alt; messen Sie die Weißkachel wieder.',
    ],
    [
      'Reading 3 is sent back: darker than the others, mostly in 550 nm, 5.2 times the usual scatter where 3 is allowed; look for dust, a ridge or a tilted head, and read that spot again.',
      'Messung 3 geht zurück: dunkler als die anderen, vor allem in 550 nm, 5,2-mal die übliche Streuung, erlaubt ist 3; suchen Sie nach Staub, einem Grat oder einem gekippten Kopf und messen Sie diese Stelle noch einmal.',
    ],
    [
      '3 readings kept, 1 sent back: enough, they agree.',
      '3 Messungen, die gelten, 1 zurück: genug, sie sind sich einig.',
    ],
    [
      'Out of reach of these tubes; the nearest mix: value kept, too warm by 3.2, too weak by 12.',
      'Außer Reichweite dieser Tuben; die nächste Mischung: Tonwert gehalten, um 3,2 zu warm, um 12 zu blass.',
    ],
    [
      'It hides less: full hiding takes 1.40 times the thickness. No difference is larger than the doubt of the two measurements.',
      'Sie deckt weniger: volles Decken braucht die 1,40-fache Dicke. Kein Unterschied ist größer als der Zweifel der beiden Messungen.',
    ],
  ])('is made of the values of %s', (english, german) => {
    expect(inGerman(english)).toBe(german);
  });

  it('leaves names as they are, also where one is a word of ours', () => {
    expect(inGerman('The palette has no tube "white"; it has white, 1.5 blue.')).toBe(
      'Die Palette hat keine Tube „white“; sie hat white, 1.5 blue.',
    );
  });

  it('is not made up: what no catalogue knows stays', () => {
    expect(inGerman('A sentence from another program.')).toBeUndefined();
    expect(inGerman('')).toBe('');
  });

  it('has every word in German', () => {
    for (const word of WORDS) expect(inGerman(word)).not.toBeUndefined();
  });
});
