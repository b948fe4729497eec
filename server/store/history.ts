import type { Db } from './open-store.ts';

export type HistoryEntry =
  | { readonly kind: 'reading'; readonly readingId: string; readonly swatchId: string }
  | { readonly kind: 'weigh'; readonly swatchId: string; readonly grams: readonly number[] }
  | { readonly kind: 'decide'; readonly readingId: string; readonly keep: boolean; readonly reason: string }
  | { readonly kind: 'undo' }
  | { readonly kind: 'redo' }
  | { readonly kind: 'close' }
  | { readonly kind: 'open' };

/** Whose history: exactly one of the two. */
export type Whose = { readonly ladderId: string } | { readonly checkId: string };

export function addHistory(db: Db, whose: Whose, entry: HistoryEntry, at: string): void {
  const { kind, ...body } = entry;
  db.prepare('insert into history (ladder_id, check_id, kind, body, at) values (?, ?, ?, ?, ?)').run(
    'ladderId' in whose ? whose.ladderId : null,
    'checkId' in whose ? whose.checkId : null,
    kind,
    JSON.stringify(body),
    at,
  );
}

export function historyOf(db: Db, whose: Whose): HistoryEntry[] {
  const [column, id] = 'ladderId' in whose ? ['ladder_id', whose.ladderId] : ['check_id', whose.checkId];
  return db
    .prepare<[string], { kind: string; body: string }>(
      `select kind, body from history where ${column} = ? order by seq`,
    )
    .all(id)
    .map((row) => ({ kind: row.kind, ...(JSON.parse(row.body) as object) }) as HistoryEntry);
}

/** When grams of a ladder were last said, taken back or said again; undefined when they never were. */
export function lastWeighed(db: Db, ladderId: string): string | undefined {
  return (
    db
      .prepare<[string], { at: string | null }>(
        "select max(at) as at from history where ladder_id = ? and kind in ('weigh', 'undo', 'redo')",
      )
      .get(ladderId)?.at ?? undefined
  );
}
