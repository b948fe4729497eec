import type { Db } from './open-store.ts';

/** Says on which day a film was drawn down; the last word counts. */
export function addPulled(db: Db, swatchId: string, pulledOn: string, at: string): void {
  db.prepare('insert into pulled (swatch_id, pulled_on, at) values (?, ?, ?)').run(swatchId, pulledOn, at);
}

/** ISO 8601 date; undefined where nobody said. */
export function pulledOn(db: Db, swatchId: string): string | undefined {
  return db
    .prepare<[string], { pulled_on: string }>(
      'select pulled_on from pulled where swatch_id = ? order by seq desc limit 1',
    )
    .get(swatchId)?.pulled_on;
}
