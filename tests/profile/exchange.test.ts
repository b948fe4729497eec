/**
 * Outside checks: the behaviour of a strict CGATS reader as its public source and tests show it (counts, identifier,
 * declared names), the CxF3 core schema 3.0.018's order of elements, RFC 4180, and xmllint for well-formedness.
 */
import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { readCgats } from '../../src/profile/exchange/cgats/read.ts';
import { writeCgats } from '../../src/profile/exchange/cgats/write.ts';
import { profileFromTable, tableFromProfile } from '../../src/profile/exchange/constants-table.ts';
import { readCsv } from '../../src/profile/exchange/csv/read.ts';
import { writeCsv } from '../../src/profile/exchange/csv/write.ts';
import { readCxf } from '../../src/profile/exchange/cxf/read.ts';
import { writeCxf } from '../../src/profile/exchange/cxf/write.ts';
import { fromQuotelessJson, quotelessJson } from '../../src/profile/exchange/quoteless-json.ts';
import { ExchangeProblem, type SpectralTable } from '../../src/profile/exchange/spectral-table.ts';
import { readProfile } from '../../src/profile/read.ts';
import { inventedProfile } from './invented-profile.ts';

const readings: SpectralTable = {
  title: 'invented ladder',
  created: '2026-01-31T10:00:00Z',
  originator: 'tintladder 0.1.0',
  instrument: 'self-built HEAD-8',
  geometry: '45/0',
  rows: [
    {
      id: 's1',
      name: "painter's blue 1:4",
      quantity: 'reflectance',
      wavelengthsNm: [400, 410, 420],
      values: [0.4501, 1 / 3, 0.0000123],
      tags: { SAMPLE_BACKING: 'white' },
    },
    {
      id: 's2',
      name: 'masstone',
      quantity: 'reflectance',
      wavelengthsNm: [400, 410, 420],
      values: [0.04, 0.05, 1.0039],
      tags: { SAMPLE_BACKING: 'black' },
    },
  ],
  notes: {},
  assumptions: [],
};
const curves = (t: SpectralTable): unknown =>
  t.rows.map((r) => [r.id, r.name, r.wavelengthsNm, r.values, r.tags['SAMPLE_BACKING']]);

describe('what a reader cannot settle is a question, never a guess', () => {
  const question = (run: () => unknown): string | undefined => {
    try {
      run();
    } catch (error) {
      if (error instanceof ExchangeProblem) return error.choice;
      throw error;
    }
    return 'nothing asked';
  };

  it('asks for the scale of a file of small numbers', () => {
    expect(question(() => readCsv('id,R_400,R_410\nblack,0.05,0.06\n'))).toBe('scale');
    expect(
      readCsv('id,R_400,R_410\nblack,0.05,0.06\n', { scale: 'per cent' }).rows[0]!.values[0],
    ).toBeCloseTo(0.0005, 12);
  });

  it('asks whether commas are decimal commas in CGATS text', () => {
    const text =
      'CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID SPECTRAL_DEC400 SPECTRAL_DEC410\nEND_DATA_FORMAT\nBEGIN_DATA\n1 0,45 0,33\nEND_DATA\n';
    expect(question(() => readCgats(text))).toBe('decimalComma');
    expect(readCgats(text, { decimalComma: true }).rows[0]!.values).toEqual([0.45, 0.33]);
  });

  it('lists per cent as assumed where only the size of the numbers says so', () => {
    const t = readCsv('id,R_400,R_410\nw,45,33\n');
    expect(t.rows[0]!.values[0]).toBeCloseTo(0.45, 12);
    expect(t.assumptions.map((a) => a.choice)).toEqual(['scale']);
  });
});

describe('hostile and broken files are refused in one sentence', () => {
  const xml = (inner: string): string => `<?xml version="1.0"?>${inner}`;
  const cases: [string, () => unknown, RegExp][] = [
    ['an empty CSV', () => readCsv(''), /empty/],
    [
      'text where a number belongs',
      () => readCsv('id,R_400,R_410\nw,0.4,abc\n'),
      /"abc" stands at row 2, column R_410/,
    ],
    ['a wavelength twice', () => readCsv('id,R_400,400nm\nw,0.4,0.5\n'), /400 nm twice/],
    ['a file over the size limit', () => readCsv('x'.repeat(20_000_001)), /20.0 million characters/],
    [
      'CGATS cut off',
      () => readCgats('CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID\n'),
      /END_DATA_FORMAT is missing/,
    ],
    ['CGATS without data', () => readCgats('hello\n'), /No BEGIN_DATA/],
    ['an open quote', () => readCgats('ORIGINATOR "me\n'), /line 1 and does not end/],
    ['entities', () => readCxf(xml('<!DOCTYPE a [<!ENTITY b "c">]><CxF/>')), /document type or entities/],
    ['depth', () => readCxf(xml('<a>'.repeat(60) + '</a>'.repeat(60))), /nests elements more than 40 deep/],
    ['broken XML', () => readCxf(xml('<CxF><a></CxF>')), /not well-formed/],
    ['another XML', () => readCxf(xml('<svg></svg>')), /no CxF element/],
  ];
  it.each(cases)('%s', (_name, run, sentence) => {
    expect(run).toThrow(ExchangeProblem);
    expect(run).toThrow(sentence);
  });
});

describe('CGATS.17', () => {
  it('writes exact counts, declared names, the identifier first and plain ASCII', () => {
    const { text, notHeld } = writeCgats({ ...readings, title: 'ladder, "best" – 1' });
    expect(text.startsWith('CGATS.17\n')).toBe(true);
    expect(text).toMatch(/^NUMBER_OF_FIELDS\t7$/m);
    expect(text).toMatch(/^NUMBER_OF_SETS\t2$/m);
    for (const name of ['SAMPLE_NAME', 'SPECTRAL_DEC400']) expect(text).toContain(`KEYWORD\t"${name}"`);
    expect(text).not.toMatch(/[^\t\n -~]/);
    expect(notHeld).toHaveLength(1);
  });

  it('reads back what it wrote, every digit', () => {
    const back = readCgats(writeCgats(readings).text);
    expect(curves(back)).toEqual(curves(readings));
    expect(back).toMatchObject({
      title: readings.title,
      created: readings.created,
      geometry: '45/0',
      instrument: readings.instrument,
      assumptions: [],
    });
  });

  it('takes dialects: BOM, CRLF, comments, wrapped rows, no identifier, wrong counts, unquoted names', () => {
    const text =
      "\uFEFFORIGINATOR 'someone'\r\n# a comment\r\nNUMBER_OF_SETS 9\r\nBEGIN_DATA_FORMAT\r\nSAMPLE_ID SAMPLE_NAME\r\nnm400 nm410\r\nEND_DATA_FORMAT\r\nBEGIN_DATA\r\n1 deep blue 45 33\r\n2 white 90 91\r\nEND_DATA\r\n";
    const t = readCgats(text);
    expect(t.rows.map((r) => [r.name, r.values[0]!.toFixed(2)])).toEqual([
      ['deep blue', '0.45'],
      ['white', '0.90'],
    ]);
    expect(t.assumptions.map((a) => a.sentence).join(' ')).toMatch(
      /"deep blue" was read as one name.*says 9; 2 were found.*per cent/s,
    );
  });

  it("takes the standard's own wavelength and value pairs", () => {
    const text =
      'CGATS.17\nNUMBER_OF_FIELDS 5\nBEGIN_DATA_FORMAT\nSAMPLE_ID SPECTRAL_NM SPECTRAL_PCT SPECTRAL_NM SPECTRAL_PCT\nEND_DATA_FORMAT\nNUMBER_OF_SETS 1\nBEGIN_DATA\nA 400 45.01 410 46.22\nEND_DATA\n';
    const [row] = readCgats(text).rows;
    expect(row!.wavelengthsNm).toEqual([400, 410]);
    expect(row!.values[0]).toBeCloseTo(0.4501, 12);
  });
});

describe('CSV', () => {
  it('disarms cells a spreadsheet would run, and takes them back as they were', () => {
    const t: SpectralTable = {
      ...readings,
      rows: [{ ...readings.rows[0]!, name: '=HYPERLINK("x")', id: '@1' }],
    };
    const { text } = writeCsv(t);
    expect(text).toContain("'@1");
    expect(text).toContain("'=HYPERLINK");
    expect(readCsv(text).rows[0]).toMatchObject({ id: '@1', name: '=HYPERLINK("x")' });
  });

  it('reads back what it wrote, every digit', () => {
    expect(curves(readCsv(writeCsv(readings).text))).toEqual(curves(readings));
  });

  it('reads semicolons with decimal commas and says so', () => {
    const t = readCsv('\uFEFF# head\nname;R_400;R_410\nblau;0,45;0,33\n');
    expect(t.rows[0]!.values).toEqual([0.45, 0.33]);
    expect(t.assumptions.map((a) => a.choice)).toContain('decimalComma');
  });

  it('reads a long file and wavelengths down the first column', () => {
    expect(readCsv('nm,value\n400,0.45\n410,0.33\n').rows[0]).toMatchObject({
      wavelengthsNm: [400, 410],
      values: [0.45, 0.33],
    });
    expect(readCsv('nm\tone\ttwo\n410\t0.3\t0.4\n400\t0.5\t0.6\n').rows.map((r) => [r.id, r.values])).toEqual(
      [
        ['one', [0.5, 0.3]],
        ['two', [0.6, 0.4]],
      ],
    );
  });
});

describe('CxF3', () => {
  it('reads back what it wrote, every digit', () => {
    const back = readCxf(writeCxf(readings, '2026-01-31T10:00:00Z').text);
    expect(curves(back)).toEqual(curves(readings));
    expect(back).toMatchObject({ title: readings.title, geometry: '45/0', instrument: readings.instrument });
  });

  it('puts bands that are no regular grid into CustomSpectrum points', () => {
    const bands: SpectralTable = {
      ...readings,
      rows: [{ ...readings.rows[0]!, wavelengthsNm: [415, 445, 480] }],
    };
    const { text } = writeCxf(bands, '2026-01-31T10:00:00Z');
    expect(text).toContain('<cc:SpectralPoint WL="415">0.4501</cc:SpectralPoint>');
    expect(text).not.toContain('ReflectanceSpectrum');
    expect(curves(readCxf(text))).toEqual(curves(bands));
  });

  it("keeps the schema's order of elements", () => {
    const { text } = writeCxf(readings, '2026-01-31T10:00:00Z');
    const order = (names: string[]): void => {
      const at = names.map((n) => text.indexOf(`<cc:${n}`));
      expect(
        at.every((p) => p >= 0),
        names.join(),
      ).toBe(true);
      expect([...at].sort((a, b) => a - b)).toEqual(at);
    };
    order([
      'FileInformation',
      'Creator',
      'CreationDate',
      'Description',
      'Tag',
      'Resources',
      'ObjectCollection',
      'Object',
      'ColorValues',
      'ReflectanceSpectrum',
      'TagCollection',
      'ColorSpecificationCollection',
      'MeasurementSpec',
      'MeasurementType',
      'GeometryChoice',
      'WavelengthRange',
      'Device',
    ]);
    expect(text.match(/<cc:Object [^>]*>\s*<cc:CreationDate>/g)).toHaveLength(readings.rows.length);
  });

  it.skipIf(spawnSync('xmllint', ['--version']).error)('is well formed to xmllint', () => {
    const run = spawnSync('xmllint', ['--noout', '-'], {
      input: writeCxf(readings, '2026-01-31T10:00:00Z').text,
    });
    expect(String(run.stderr)).toBe('');
    expect(run.status).toBe(0);
  });

  it("takes other people's files: no dates, Lab in attributes, the step on the spectrum", () => {
    const t = readCxf(
      '<CxF><Resources><ObjectCollection><Object Name="a"><ColorValues><ReflectanceSpectrum StartWL="400" EndWL="420">0.1 0.2 0.3</ReflectanceSpectrum><ColorCIELab L="50" A="1" B="-2"/></ColorValues></Object></ObjectCollection></Resources></CxF>',
    );
    expect(t.rows[0]).toMatchObject({
      name: 'a',
      wavelengthsNm: [400, 410, 420],
      lab: { L: 50, a: 1, b: -2 },
    });
    expect(t.assumptions).toHaveLength(1);
  });
});

describe('constants travel without loss where the format can hold them', () => {
  const profile = inventedProfile();
  const table = tableFromProfile(profile);
  it('through CGATS text', () => {
    expect(readProfile(profileFromTable(readCgats(writeCgats(table).text), profile.created))).toEqual(
      profile,
    );
  });
  it('through CSV with its sidecar', () => {
    const { text, sidecar } = writeCsv(table);
    const back = { ...readCsv(text), ...(JSON.parse(sidecar) as Partial<SpectralTable>) };
    expect(readProfile(profileFromTable(back, profile.created))).toEqual(profile);
  });
  it('and CxF3 says that it cannot hold them', () => {
    expect(writeCxf(table, profile.created).notHeld.join()).toMatch(
      /K, S and their covariance were left out/,
    );
  });
  it('and a table of readings is not taken for constants', () => {
    expect(() => profileFromTable(readings, profile.created)).toThrow(/no K and S/);
  });
});

describe('JSON without double quotes', () => {
  it('comes back exactly, apostrophes, quotes and letters beyond ASCII included', () => {
    const value = { a: 'painter\'s "blue"', b: 'größe \\ ', c: [1, null] };
    expect(quotelessJson(value)).toMatch(/^[\x20-\x7e]*$/);
    expect(quotelessJson(value)).not.toContain('"');
    expect(fromQuotelessJson(quotelessJson(value))).toEqual(value);
  });
});
