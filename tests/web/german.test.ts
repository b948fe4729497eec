/** German of what the program says: complete, and found again from the English sentence alone. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { type Sentences, SLOT, fill } from '../../src/sentence/catalogue.ts';
import { recogniser, type SlotKind } from '../../src/sentence/recognise.ts';
import { type ShapeIssue, shapeSays } from '../../src/sentence/shape.ts';
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

describe('what a schema finds wrong', () => {
  const shape = z.strictObject({
    most: z.number().max(5).optional(),
    above: z.number().positive().optional(),
    whole: z.int().optional(),
    name: z.string().min(1).max(3).optional(),
    films: z.array(z.number()).length(2).optional(),
    way: z.enum(['wet', 'dry']).optional(),
    version: z.literal(1).optional(),
    pulled: z.iso.date().optional(),
    paint: z.discriminatedUnion('by', [z.strictObject({ by: z.literal('g') })]).optional(),
    needed: z.boolean(),
  });

  it.each([
    [{}, 'it is missing'],
    [{ needed: 'yes' }, 'true or false is wanted here'],
    [{ most: 6 }, 'a number of at most 5 is wanted here'],
    [{ above: 0 }, 'a number above 0 is wanted here'],
    [{ whole: 1.5 }, 'a whole number is wanted here'],
    [{ name: '' }, 'at least 1 characters are wanted here'],
    [{ films: [1] }, 'exactly 2 entries are wanted here'],
    [{ way: 'damp' }, 'one of "wet", "dry" is wanted here'],
    [{ version: 2 }, '1 is wanted here, and nothing else'],
    [{ pulled: 'May' }, 'a date such as 2026-05-31 is wanted here'],
    [{ paint: { by: 'ml' } }, '"g" is wanted here, and nothing else'],
    [{ grams: 1 }, 'there is no member "grams" here'],
  ])('is a clause of our own in both languages: %j', (document, clause) => {
    const { error } = shape.safeParse({ ...('needed' in document ? {} : { needed: true }), ...document });
    const found = Object.keys(document).length > 0 ? error : shape.safeParse({}).error;
    expect(shapeSays(found!.issues[0] as ShapeIssue)).toBe(clause);
    expect(inGerman(clause)).toMatch(/^(hier gehör|es fehlt|einen Eintrag)/);
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
    [
      'The body\'s "grams" cannot be taken: a number of at most 5 is wanted here (and 2 more); see /api/openapi.json for what is allowed.',
      'Inhalt, bei „grams“, ist nicht zu gebrauchen: hier gehört eine Zahl von höchstens 5 hin (und 2 weitere); in /api/openapi.json steht, was erlaubt ist.',
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
