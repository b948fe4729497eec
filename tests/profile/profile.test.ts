/** Outside check: Ajv (draft 2020-12, strict) as a second judge of the published JSON Schema. */
import { readFileSync } from 'node:fs';
import addFormats from 'ajv-formats';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ProfileProblem } from '../../src/profile/problem.ts';
import { publishedSchemas } from '../../src/profile/published-schemas.ts';
import { readProfile } from '../../src/profile/read.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import { withoutMakers } from '../../src/profile/without-makers.ts';
import { writeProfile } from '../../src/profile/write.ts';
import { readJson } from '../fixtures/read-table.ts';
import { inventedProfile } from './invented-profile.ts';

const changed = (change: (p: PaletteProfile) => void): PaletteProfile => {
  const p = inventedProfile();
  change(p);
  return p;
};

describe('a palette profile that cannot be read is refused in one sentence', () => {
  const cases: [string, unknown, RegExp][] = [
    ['nothing', undefined, /JSON object; something else was given/],
    ['a list', [], /JSON object/],
    ['text that is not JSON', '{"format":', /not JSON/],
    ['a swatch set', { format: 'swatch-set', version: 1 }, /"swatch-set".*fitted first/],
    ['a later version', { ...inventedProfile(), version: 2 }, /version 2; this program reads version 1/],
    ['no tubes', { ...inventedProfile(), tubes: [] }, /tubes/],
    ['another grid', changed((p) => (p.wavelengths[3] = 411)), /Wavelength 4 of the profile is 411 nm/],
    ['K of zero', changed((p) => (p.tubes[1]!.K[2] = 0)), /K of "invented blue" is 0 at 400 nm/],
    ['S below zero', changed((p) => (p.tubes[2]!.S[35] = -0.1)), /S of "invented earth" is -0.1 at 730 nm/],
    ['a short K', changed((p) => p.tubes[1]!.K.pop()), /tubes\[1\]\.K/],
    ['two tubes of one id', changed((p) => (p.tubes[2]!.id = 'blue')), /Two tubes have the id "blue"/],
    ['a white that is not there', changed((p) => (p.white = 'zinc')), /names "zinc" as its white/],
    [
      'unlike shared columns',
      changed((p) => (p.tubes[1]!.covariance.shared = [])),
      /0 shared covariance columns/,
    ],
    [
      'a frame that follows fewer columns than there are',
      changed((p) => (p.frameDoubt = { k2: [0.1, 0.1] })),
      /doubt in k2 has 2 entries/,
    ],
    ['a 45/0 surface without its constant', changed((p) => delete p.surface.escape), /escape constant/],
    ['NaN', changed((p) => (p.tubes[0]!.K[0] = Number.NaN)), /tubes\[0\]\.K\[0\]/],
  ];
  it.each(cases)('%s', (_name, input, sentence) => {
    expect(() => readProfile(input)).toThrow(ProfileProblem);
    expect(() => readProfile(input)).toThrow(sentence);
  });
});

describe('reading what was written', () => {
  it('is identity, from text and from the document', () => {
    const p = inventedProfile();
    expect(readProfile(writeProfile(p))).toEqual(p);
    expect(readProfile(JSON.parse(writeProfile(p)))).toEqual(p);
  });

  it('is identity for any constants, to the last bit', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 1e-300, max: 1e300, noNaN: true }), { minLength: 36, maxLength: 36 }),
        (K) => {
          const p = changed((q) => (q.tubes[1]!.K = K));
          expect(readProfile(writeProfile(p))).toEqual(p);
        },
      ),
      { seed: 2020, numRuns: 50 },
    );
  });

  it('keeps members it does not know', () => {
    const p = { ...inventedProfile(), note: { kept: true } };
    expect(readProfile(writeProfile(p as PaletteProfile))).toEqual(p);
  });

  it('takes a file with a byte-order mark', () => {
    expect(readProfile(`\uFEFF${writeProfile(inventedProfile())}`)).toEqual(inventedProfile());
  });
});

describe("a maker's name", () => {
  it('is left out, and the label with it where asked', () => {
    const p = changed((q) => {
      q.tubes[1]!.maker = 'Somebody';
      q.tubes[1]!.label = 'Somebody blue';
    });
    expect(JSON.stringify(withoutMakers(p))).not.toContain('"maker"');
    expect(JSON.stringify(withoutMakers(p, { labels: 'pigments' }))).not.toContain('Somebody');
    expect(withoutMakers(p, { labels: 'pigments' }).tubes[1]!.label).toBe('PB29');
  });
});

describe('the published JSON Schemas', () => {
  const ajv = new Ajv2020({ strict: true, allErrors: false });
  addFormats.default(ajv);
  const schemas = publishedSchemas();

  it.each(Object.keys(schemas))('%s is the committed file', (file) => {
    const committed = JSON.parse(
      readFileSync(new URL(`../../docs/${file}`, import.meta.url), 'utf8'),
    ) as unknown;
    expect(committed, 'run: node --import tsx scripts/make-schemas.ts').toEqual(schemas[file]);
  });

  it('accepts a good profile and refuses a bad one, by Ajv', () => {
    const judge = ajv.compile(schemas['palette-profile.schema.json']!);
    expect(judge(inventedProfile()), JSON.stringify(judge.errors)).toBe(true);
    expect(judge(changed((p) => p.tubes[1]!.K.pop()))).toBe(false);
    expect(judge({ ...inventedProfile(), created: 'yesterday' })).toBe(false);
    expect(judge({ ...inventedProfile(), geometry: '0/45' })).toBe(false);
  });

  it.each(['oil-ladders', 'transport-spectral', 'transport-bands', 'transport-xyz'])(
    'accepts %s.json, by Ajv',
    (name) => {
      const judge = ajv.compile(schemas['swatch-set.schema.json']!);
      expect(judge(readJson(`paint/${name}.json`)), JSON.stringify(judge.errors)).toBe(true);
    },
  );
});
