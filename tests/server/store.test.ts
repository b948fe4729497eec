import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { freeId, slug } from '../../server/store/ids.ts';
import { APPLICATION_ID, migrate, migrations } from '../../server/store/migrate.ts';
import { assertDurable, backUp, openStore, StoreProblem } from '../../server/store/open-store.ts';
import { addPalette } from '../../server/store/palettes.ts';
import { addReading, canonicalJson, formIdOf, readingsOfSwatch } from '../../server/store/readings.ts';
import { addSwatch } from '../../server/store/swatches.ts';
import { addFit, readingIdsOfFit } from '../../server/store/fits.ts';

const AT = '2026-01-01T00:00:00.000Z';
let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'tintladder-store-'));
  file = join(folder, 'tintladder.sqlite');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function withReading() {
  const db = openStore(file);
  const palette = addPalette(db, { title: 'Small palette', note: '', demo: false, at: AT });
  addSwatch(db, {
    id: 'swatch-1',
    palette_id: palette.id,
    ladder_id: null,
    check_id: null,
    kind: 'file',
    name: 'masstone',
    white_parts: null,
    parts: '[]',
    painted: '{}',
    film: 'opaque',
    side: null,
  });
  const formId = formIdOf(db, { kind: 'spectral', geometry: '45/0', wavelengths: [400, 500] }, AT);
  const reading = addReading(db, {
    swatchId: 'swatch-1',
    formId,
    source: 'typed',
    over: 'opaque',
    values: [0.1, 0.30000000000000004],
    raw: {},
    at: AT,
  });
  return { db, palette, formId, reading };
}

describe('the store', () => {
  it('is in WAL mode with synchronous FULL after it is made and after it is reopened', () => {
    for (let open = 0; open < 3; open += 1) {
      const db = openStore(file);
      expect(db.pragma('journal_mode', { simple: true })).toBe('wal');
      expect(db.pragma('synchronous', { simple: true })).toBe(2);
      db.close();
    }
  });

  it('asserts it: a connection opened at the driver’s own default is refused', () => {
    openStore(file).close();
    const plain = new Database(file);
    expect(plain.pragma('synchronous', { simple: true })).toBe(1);
    expect(() => assertDurable(plain)).toThrow(/wal\/1 where wal\/2 is needed/);
    plain.close();
  });

  it('refuses a file that is no database, another program’s database and a newer store, each in one sentence', () => {
    writeFileSync(file, 'not a database, only some text that is long enough to be looked at');
    expect(() => openStore(file)).toThrow(StoreProblem);
    const other = join(folder, 'other.sqlite');
    const foreign = new Database(other);
    foreign.exec('create table thing (id integer)');
    foreign.close();
    expect(() => openStore(other)).toThrow(/another program/);
    const newer = join(folder, 'newer.sqlite');
    openStore(newer).close();
    const raised = new Database(newer);
    raised.pragma('user_version = 999');
    raised.close();
    expect(() => openStore(newer)).toThrow(/number 999/);
  });

  it('numbers its migrations without gaps and applies each once', () => {
    expect(migrations().map((m) => m.number)).toEqual(migrations().map((_, i) => i + 1));
    const db = openStore(file);
    expect(db.pragma('user_version', { simple: true })).toBe(migrations().length);
    expect(db.pragma('application_id', { simple: true })).toBe(APPLICATION_ID);
    const extra = [
      ...migrations(),
      { number: migrations().length + 1, name: 'next', sql: 'create table extra (n)' },
    ];
    migrate(db, extra);
    migrate(db, extra);
    expect(db.pragma('user_version', { simple: true })).toBe(extra.length);
    db.close();
  });

  it('leaves nothing of a migration that fails half-way', () => {
    const db = openStore(file);
    const bad = { number: 999, name: 'bad', sql: 'create table half (n); select no_such_function();' };
    expect(() => migrate(db, [...migrations(), bad])).toThrow();
    expect(db.prepare("select count(*) as n from sqlite_schema where name = 'half'").get()).toEqual({ n: 0 });
    expect(db.pragma('user_version', { simple: true })).toBe(migrations().length);
    db.close();
  });

  it('never changes or deletes a reading, an entry of the history or a profile', () => {
    const { db, reading } = withReading();
    expect(() =>
      db.prepare('update reading set channel_values = ? where id = ?').run('[1]', reading.id),
    ).toThrow(/never changed/);
    expect(() => db.prepare('delete from reading').run()).toThrow(/never deleted/);
    expect(() => db.prepare('insert or replace into reading select * from reading').run()).toThrow();
    expect(readingsOfSwatch(db, 'swatch-1')).toHaveLength(1);
    db.close();
  });

  it('gives a reading back to the last bit', () => {
    const { db } = withReading();
    expect(JSON.parse(readingsOfSwatch(db, 'swatch-1')[0]!.channel_values)).toEqual([
      0.1, 0.30000000000000004,
    ]);
    db.close();
  });

  it('holds a fit to readings that exist', () => {
    const { db, palette, formId, reading } = withReading();
    const fit = { palette_id: palette.id, form_id: formId, settings: '{}', left_out: '[]', started_at: AT };
    addFit(db, { id: 'fit-1', ...fit }, [reading.id]);
    expect(readingIdsOfFit(db, 'fit-1')).toEqual([reading.id]);
    expect(() => addFit(db, { id: 'fit-2', ...fit }, ['reading-that-is-not'])).toThrow(/FOREIGN KEY/);
    expect(db.prepare("select count(*) as n from fit where id = 'fit-2'").get()).toEqual({ n: 0 });
    db.close();
  });

  it('makes a backup that opens by itself with everything in it', async () => {
    const { db } = withReading();
    const copy = join(folder, 'backup.sqlite');
    await backUp(db, copy);
    db.close();
    const opened = openStore(copy);
    expect(readingsOfSwatch(opened, 'swatch-1')).toHaveLength(1);
    expect(opened.pragma('integrity_check', { simple: true })).toBe('ok');
    opened.close();
  });

  it('knows one form of reading by its content, whatever the order of its members', () => {
    const { db, formId } = withReading();
    expect(formIdOf(db, { wavelengths: [400, 500], geometry: '45/0', kind: 'spectral' }, AT)).toBe(formId);
    expect(formIdOf(db, { wavelengths: [400, 501], geometry: '45/0', kind: 'spectral' }, AT)).not.toBe(
      formId,
    );
    expect(canonicalJson({ b: [{ d: 1, c: 2 }], a: 0 })).toBe('{"a":0,"b":[{"c":2,"d":1}]}');
    db.close();
  });
});

describe('ids of tubes', () => {
  it('are made of the label in plain letters', () => {
    expect(slug('Deep blue (2nd tube)')).toBe('deep-blue-2nd-tube');
    expect(slug('  Grünerde, gebrannt ')).toBe('grunerde-gebrannt');
    expect(slug('***')).toBe('tube');
  });

  it('take the first free number when the name is taken', () => {
    const taken = new Set(['white', 'white-2']);
    expect(freeId('white', (id) => taken.has(id))).toBe('white-3');
    expect(freeId('blue', (id) => taken.has(id))).toBe('blue');
  });
});
