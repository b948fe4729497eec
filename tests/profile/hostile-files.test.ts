/** Whatever a file holds, a reader answers soon, with a table or with one sentence (ExchangeProblem). Seeded. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCgats } from '../../src/profile/exchange/cgats/read.ts';
import { writeCgats } from '../../src/profile/exchange/cgats/write.ts';
import { profileFromTable, tableFromProfile } from '../../src/profile/exchange/constants-table.ts';
import { swatchSetFromTable } from '../../src/profile/exchange/readings-table.ts';
import { SwatchSetProblem } from '../../src/calibrate/swatch-set/problem.ts';
import { readCsv } from '../../src/profile/exchange/csv/read.ts';
import { writeCsv } from '../../src/profile/exchange/csv/write.ts';
import { readCxf } from '../../src/profile/exchange/cxf/read.ts';
import { writeCxf } from '../../src/profile/exchange/cxf/write.ts';
import {
  ExchangeProblem,
  type ReadChoices,
  type SpectralTable,
} from '../../src/profile/exchange/spectral-table.ts';
import { inventedProfile } from './invented-profile.ts';

const readings: SpectralTable = {
  title: 'three readings',
  created: '2026-01-31T10:00:00Z',
  geometry: '45/0',
  rows: [0.05, 0.3, 0.8].map((v, i) => ({
    id: `s${i}`,
    name: `invented, "${i}"`,
    quantity: 'reflectance' as const,
    wavelengthsNm: [400, 410, 420],
    values: [v, v + 0.01, v + 0.02],
    lab: { L: 50, a: 1, b: 2 },
    tags: { SAMPLE_BACKING: 'black' },
  })),
  notes: { KIND_OF_READING: 'spectral' },
  assumptions: [],
};
const constants = tableFromProfile(inventedProfile());
const CREATED = '2026-01-31T10:00:00Z';
const READERS: Record<
  string,
  { read: (text: string, c: ReadChoices) => SpectralTable; good: string[]; words: string[] }
> = {
  'CGATS.17': {
    read: readCgats,
    good: [writeCgats(readings).text, writeCgats(constants).text],
    words: [
      'BEGIN_DATA',
      'END_DATA',
      'BEGIN_DATA_FORMAT',
      'END_DATA_FORMAT',
      'KEYWORD',
      '"',
      "'",
      '\n',
      '\t',
      'NM400',
    ],
  },
  CSV: {
    read: readCsv,
    good: [writeCsv(readings).text, writeCsv(constants).text],
    words: ['nm', 'R_400', 'R_410', ';', ',', '"', '\n', '\t', '#', 'sample_id', 'quantity', '0,5', '=1+1'],
  },
  CxF3: {
    read: readCxf,
    good: [writeCxf(readings, CREATED).text],
    words: [
      '<CxF>',
      '</CxF>',
      '<Object Name="a">',
      '<!DOCTYPE',
      '<![CDATA[',
      ']]>',
      '<!--',
      '&#0;',
      '&a;',
      '<',
      '>',
      '/>',
    ],
  },
};
const NUMBERS = ['0', '-1', '1e999', 'NaN', '0.5', '50', '__proto__', 'constructor', '\u0000', '\uFEFF', 'é'];
const SOON_MS = 10_000;

const choices = fc.record(
  { scale: fc.constantFrom('fraction' as const, 'per cent' as const), decimalComma: fc.boolean() },
  { requiredKeys: [] },
);

function answersOrSays(
  read: (text: string, c: ReadChoices) => SpectralTable,
  text: string,
  c: ReadChoices,
): void {
  try {
    const table = read(text, c);
    for (const make of [() => profileFromTable(table, CREATED), () => swatchSetFromTable(table)]) {
      try {
        make();
      } catch (error) {
        if (!(error instanceof ExchangeProblem || error instanceof SwatchSetProblem)) throw error;
      }
    }
    for (const row of table.rows) {
      expect(row.values.every(Number.isFinite)).toBe(true);
      expect(row.values).toHaveLength(row.wavelengthsNm.length);
    }
  } catch (error) {
    if (!(error instanceof ExchangeProblem)) throw error;
    expect(error.message).toMatch(/^[^\n]+$/);
  }
}

describe.each(Object.entries(READERS))('hostile %s', (_name, { read, good, words }) => {
  it('reads what this program writes', () => {
    for (const text of good) expect(read(text, {}).rows.length).toBeGreaterThan(0);
  });

  it('answers any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), choices, (text, c) =>
        answersOrSays(read, text, c),
      ),
      { seed: 5, numRuns: 300 },
    );
  });

  it('answers any soup of its own words', () => {
    const soup = fc.array(fc.constantFrom(...words, ...NUMBERS), { maxLength: 60 });
    fc.assert(
      fc.property(soup, fc.constantFrom('', ' ', '\n', ','), choices, (parts, between, c) =>
        answersOrSays(read, parts.join(between), c),
      ),
      { seed: 6, numRuns: 400 },
    );
  });

  it('answers a good file that was cut, doubled or scratched', () => {
    const scratch = fc.record({
      from: fc.constantFrom(...good),
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      length: fc.integer({ min: 0, max: 200 }),
      put: fc.oneof(fc.constantFrom(...words, ...NUMBERS), fc.string({ maxLength: 8 })),
    });
    fc.assert(
      fc.property(scratch, choices, ({ from, at, length, put }, c) => {
        const cut = Math.floor(at * from.length);
        answersOrSays(read, from.slice(0, cut) + put + from.slice(cut + length), c);
        if (cut % 7 === 0) answersOrSays(read, from.slice(0, cut), c);
        if (cut % 11 === 0) answersOrSays(read, from + from, c);
      }),
      { seed: 7, numRuns: 150 },
    );
  });

  it.each([
    ['opening brackets', '<a'.repeat(1_000_000)],
    ['open elements', `<CxF>${'<a>'.repeat(500_000)}`],
    ['quotes', '"'.repeat(1_000_001)],
    [
      'one endless line',
      `BEGIN_DATA_FORMAT\nSAMPLE_ID NM400\nEND_DATA_FORMAT\nBEGIN_DATA\n${'1 '.repeat(300_001)}\nEND_DATA\n`,
    ],
    ['endless columns', `${'R_400,'.repeat(300_000)}\n${'0.5,'.repeat(300_000)}`],
    ['endless rows', 'nm,value\n'.repeat(300_000)],
    ['comment lines', '#\n'.repeat(500_000)],
    ['nothing but separators', ';,\t'.repeat(400_000)],
    ['blanks', ' \t'.repeat(1_000_000)],
  ])('answers soon: %s', (_what, text) => {
    const start = performance.now();
    answersOrSays(read, text, {});
    // Not a matter of speed but of cost growing with the square of the file, which would take minutes here.
    expect(performance.now() - start).toBeLessThan(SOON_MS);
  });
});
