import type { ReadingForm } from '../api/readings.ts';
import type { Db } from './open-store.ts';
import { newId } from './ids.ts';

export interface ReadingRow {
  readonly id: string;
  readonly seq: number;
  readonly swatch_id: string;
  readonly form_id: string;
  readonly source: 'head' | 'practice' | 'typed' | 'file';
  readonly over_what: 'opaque' | 'black' | 'white';
  readonly channel_values: string;
  readonly raw: string;
  readonly taken_at: string;
}

export interface NewReading {
  readonly swatchId: string;
  readonly formId: string;
  readonly source: ReadingRow['source'];
  readonly over: ReadingRow['over_what'];
  readonly values: readonly number[];
  readonly raw: unknown;
  readonly at: string;
}

/** Adds a reading; it can never be changed afterwards (triggers of 001-bench.sql). */
export function addReading(db: Db, reading: NewReading): ReadingRow {
  const id = newId('reading');
  db.prepare(
    `insert into reading (id, seq, swatch_id, form_id, source, over_what, channel_values, raw, taken_at)
     values (?, (select coalesce(max(seq), 0) + 1 from reading), ?, ?, ?, ?, ?, ?, ?)`,
  ).run(
    id,
    reading.swatchId,
    reading.formId,
    reading.source,
    reading.over,
    JSON.stringify(reading.values),
    JSON.stringify(reading.raw),
    reading.at,
  );
  return db.prepare<[string], ReadingRow>('select * from reading where id = ?').get(id)!;
}

export function readingsOfSwatch(db: Db, swatchId: string): ReadingRow[] {
  return db
    .prepare<[string], ReadingRow>('select * from reading where swatch_id = ? order by seq')
    .all(swatchId);
}

export function readingById(db: Db, id: string): ReadingRow | undefined {
  return db.prepare<[string], ReadingRow>('select * from reading where id = ?').get(id);
}

export interface FormRow {
  readonly id: string;
  readonly description: string;
}

/** The id of a form of reading, adding it when it is new. Two forms are one when their descriptions are equal. */
export function formIdOf(db: Db, description: unknown, at: string): string {
  const text = canonicalJson(description);
  const known = db.prepare<[string], FormRow>('select * from form where description = ?').get(text);
  if (known) return known.id;
  const id = newId('form');
  db.prepare('insert into form (id, description, created_at) values (?, ?, ?)').run(id, text, at);
  return id;
}

export function formById(db: Db, id: string): FormRow | undefined {
  return db.prepare<[string], FormRow>('select * from form where id = ?').get(id);
}

/** Geometry of the first reading kept for a palette. */
export function geometryOf(db: Db, paletteId: string): ReadingForm['geometry'] | undefined {
  const first = db
    .prepare<[string], FormRow>(
      `select form.id, form.description from reading
       join swatch on swatch.id = reading.swatch_id join form on form.id = reading.form_id
       where swatch.palette_id = ? order by reading.seq limit 1`,
    )
    .get(paletteId);
  return first && (JSON.parse(first.description) as ReadingForm).geometry;
}

/** JSON with members in alphabetical order, so that equal descriptions are equal text. */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(value, (_, member: unknown) =>
    typeof member === 'object' && member !== null && !Array.isArray(member)
      ? Object.fromEntries(Object.entries(member).sort(([a], [b]) => (a < b ? -1 : 1)))
      : member,
  );
}

/** Ladders that hold readings of a head. */
export function laddersReadBy(db: Db, instrument: string): string[] {
  return db
    .prepare<[string], { id: string }>(
      `select distinct swatch.ladder_id as id from reading join swatch on swatch.id = reading.swatch_id
       where swatch.ladder_id is not null and json_extract(reading.raw, '$.instrument') = ?`,
    )
    .all(instrument)
    .map(({ id }) => id);
}
