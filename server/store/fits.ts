import type { Db } from './open-store.ts';
import { say } from '../api/sentences/fitting.ts';

export interface FitRow {
  readonly id: string;
  readonly palette_id: string;
  readonly form_id: string;
  readonly state: 'pending' | 'running' | 'complete' | 'failed' | 'cancelled';
  readonly settings: string;
  readonly left_out: string;
  readonly sentence: string;
  readonly result: string | null;
  readonly started_at: string;
  readonly finished_at: string | null;
}

/** A fit begins by naming exactly what it will use. */
export function addFit(
  db: Db,
  fit: Pick<FitRow, 'id' | 'palette_id' | 'form_id' | 'settings' | 'left_out' | 'started_at'>,
  readingIds: readonly string[],
): void {
  db.transaction(() => {
    db.prepare(
      `insert into fit (id, palette_id, form_id, state, settings, left_out, started_at)
       values (@id, @palette_id, @form_id, 'pending', @settings, @left_out, @started_at)`,
    ).run(fit);
    const name = db.prepare('insert into fit_reading (fit_id, reading_id) values (?, ?)');
    for (const readingId of readingIds) name.run(fit.id, readingId);
  })();
}

export function setFitState(
  db: Db,
  id: string,
  change: { state: FitRow['state']; sentence?: string; result?: string; finishedAt?: string },
): void {
  db.prepare(
    `update fit set state = @state, sentence = coalesce(@sentence, sentence), result = coalesce(@result, result),
       finished_at = coalesce(@finishedAt, finished_at) where id = @id`,
  ).run({ id, sentence: null, result: null, finishedAt: null, ...change });
}

/** Fits a stopped program left behind can never finish. */
export function closeAbandonedFits(db: Db, at: string): void {
  db.prepare(
    `update fit set state = 'failed', finished_at = ?,
       sentence = ?
     where state in ('pending', 'running')`,
  ).run(at, say('program-stopped'));
}

export function fitById(db: Db, id: string): FitRow | undefined {
  return db.prepare<[string], FitRow>('select * from fit where id = ?').get(id);
}

export function fitsOf(db: Db, paletteId: string): FitRow[] {
  return db
    .prepare<[string], FitRow>('select * from fit where palette_id = ? order by started_at desc, rowid desc')
    .all(paletteId);
}

export function readingIdsOfFit(db: Db, id: string): string[] {
  return db
    .prepare<[string], { reading_id: string }>(
      `select reading_id from fit_reading join reading on reading.id = reading_id where fit_id = ? order by seq`,
    )
    .all(id)
    .map((row) => row.reading_id);
}
