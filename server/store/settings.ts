import type { Db } from './open-store.ts';

/** A stored choice, as JSON; undefined when never made. */
export function readSetting(db: Db, name: string): unknown {
  const row = db.prepare<[string], { body: string }>('select body from setting where name = ?').get(name);
  return row === undefined ? undefined : (JSON.parse(row.body) as unknown);
}

export function writeSetting(db: Db, name: string, value: unknown): void {
  db.prepare(
    'insert into setting (name, body) values (?, ?) on conflict (name) do update set body = excluded.body',
  ).run(name, JSON.stringify(value));
}
