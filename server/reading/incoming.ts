import { readTyped } from '../../src/calibrate/entry/read-typed.ts';
import type { TypedEntry } from '../../src/calibrate/entry/typed-entry.ts';
import type { Geometry } from '../../src/calibrate/swatch-set/schema.ts';
import { parseWhiteName, whiteParts } from '../../src/colour/illuminant.ts';
import type { SpectralRow, SpectralTable } from '../../src/profile/exchange/spectral-table.ts';
import type { Finding } from '../api/words.ts';
import { openTable, type TableAnswers } from '../importing/open-table.ts';
import { readingFormOf } from '../importing/reading-form-of.ts';
import type { IncomingReading } from '../ladder/deeds.ts';
import { HttpProblem, unusable } from '../problem.ts';
import { say } from '../api/sentences/importing.ts';

/** A reading ready to be kept, with what had to be assumed about it. */
export interface Incoming {
  readonly reading: IncomingReading;
  readonly findings: Finding[];
}

/** @throws ReadingRefused, or HttpProblem with `choices` where only a person can say */
export function fromTyped(entry: TypedEntry, source: 'typed' | 'file', raw: unknown = entry): Incoming {
  const outcome = readTyped(entry);
  if (outcome.outcome === 'question') {
    throw new HttpProblem(422, outcome.sentence, '/problems/question', {
      choices: outcome.choices,
      at: 'scale',
    });
  }
  return {
    reading: { source, form: readingFormOf(outcome.form), values: outcome.values, raw },
    findings: outcome.assumed.map((sentence) => ({ level: 'note', code: 'assumed', sentence })),
  };
}

export interface ReadingFile extends TableAnswers {
  readonly fileName: string;
  readonly text: string;
  readonly sample?: string | undefined;
}

/** One sample of a file of readings. @throws HttpProblem, ExchangeProblem, ReadingRefused */
export function fromFile(file: ReadingFile): Incoming {
  const table = openTable(file.text, file);
  const row = sampleOf(table, file);
  const geometry = file.geometry ?? table.geometry;
  if (!geometry) {
    throw new HttpProblem(422, say('no-geometry', { file: file.fileName }), '/problems/question', {
      at: 'geometry',
      choices: ['45/0', 'd/8 specular included', 'd/8 specular excluded'],
    });
  }
  const raw = { fileName: file.fileName, sample: row.name };
  const incoming = fromTyped(entryOf(row, table, geometry, file.fileName), 'file', raw);
  const assumed = table.assumptions.map(({ sentence }): Finding => ({
    level: 'note',
    code: 'assumed',
    sentence,
  }));
  return { reading: incoming.reading, findings: [...assumed, ...incoming.findings] };
}

function sampleOf(table: SpectralTable, file: ReadingFile): SpectralRow {
  const rows = table.rows.filter((row) => row.quantity === 'reflectance');
  if (rows.length === 0) throw unusable(say('no-readings', { file: file.fileName }), 'text');
  const wanted = file.sample;
  const found = wanted === undefined ? rows[0] : rows.find((row) => row.id === wanted || row.name === wanted);
  if (wanted === undefined && rows.length > 1) {
    throw new HttpProblem(
      422,
      say('which-sample', { file: file.fileName, count: rows.length }),
      '/problems/question',
      {
        at: 'sample',
        choices: rows.slice(0, 200).map((row) => row.name),
      },
    );
  }
  if (!found) throw unusable(say('no-sample', { file: file.fileName, sample: String(wanted) }), 'sample');
  return found;
}

function entryOf(row: SpectralRow, table: SpectralTable, geometry: Geometry, fileName: string): TypedEntry {
  if (row.values.length > 0) {
    return {
      kind: 'reflectance',
      geometry,
      scale: '0-1',
      wavelengths: row.wavelengthsNm,
      values: row.values,
    };
  }
  const [illuminant, observer] = (table.white ?? '').split(/[/ ,]+/);
  if (!illuminant || !observer) {
    throw unusable(say('no-white', { file: fileName }), 'text');
  }
  const white = whiteParts(parseWhiteName(illuminant, observer));
  if (row.xyz) {
    const { X, Y, Z } = row.xyz;
    return { kind: 'XYZ', geometry, ...white, values: [X, Y, Z] };
  }
  if (row.lab) {
    const { L, a, b } = row.lab;
    return { kind: 'Lab', geometry, ...white, values: [L, a, b] };
  }
  throw unusable(say('no-numbers', { file: fileName, sample: row.name }), 'sample');
}
