import { readdirSync, readFileSync } from 'node:fs';
import type { Db } from './open-store.ts';
import { say } from '../api/sentences/bench.ts';

const FOLDER = new URL('./migrations/', import.meta.url);
/** Marks the file as ours (SQLite's application_id): "TLdr" in ASCII. */
export const APPLICATION_ID = 0x544c6472;

interface Migration {
  number: number;
  name: string;
  sql: string;
}

export function migrations(): Migration[] {
  return readdirSync(FOLDER)
    .filter((name) => /^\d{3}-.*\.sql$/.test(name))
    .sort()
    .map((name) => ({
      number: Number(name.slice(0, 3)),
      name,
      sql: readFileSync(new URL(name, FOLDER), 'utf8'),
    }));
}

/**
 * Brings a store to the newest schema, each numbered file in its own transaction; user_version holds the last one.
 * @throws Error when the file belongs to another program or a newer version of this one.
 */
export function migrate(db: Db, all: readonly Migration[] = migrations()): void {
  const newest = all.at(-1)?.number ?? 0;
  const owner = Number(db.pragma('application_id', { simple: true }));
  const before = Number(db.pragma('user_version', { simple: true }));
  const tables = db.prepare<[], { n: number }>('select count(*) as n from sqlite_schema').get()?.n ?? 0;
  if (owner !== APPLICATION_ID && (owner !== 0 || tables > 0)) {
    throw new Error(say('other-database'));
  }
  if (before > newest) {
    throw new Error(say('newer-schema', { number: before, known: newest }));
  }
  for (const migration of all) {
    if (migration.number <= before) continue;
    db.transaction(() => {
      db.exec(migration.sql);
      db.pragma(`application_id = ${APPLICATION_ID}`);
      db.pragma(`user_version = ${migration.number}`);
    })();
  }
}
