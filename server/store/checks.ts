import type { Db } from './open-store.ts';

export interface CheckRow {
  readonly id: string;
  readonly palette_id: string;
  readonly title: string;
  readonly masses: string;
  readonly film: string;
  readonly truth: string | null;
  readonly note: string;
  readonly put_away: number;
  readonly created_at: string;
}

export function addCheck(db: Db, check: Omit<CheckRow, 'put_away'>): void {
  db.prepare(
    `insert into mixture_check (id, palette_id, title, masses, film, truth, note, created_at)
     values (@id, @palette_id, @title, @masses, @film, @truth, @note, @created_at)`,
  ).run(check);
}

export function checkById(db: Db, id: string): CheckRow | undefined {
  return db.prepare<[string], CheckRow>('select * from mixture_check where id = ?').get(id);
}

export function checksOf(db: Db, paletteId: string): CheckRow[] {
  return db
    .prepare<[string], CheckRow>(
      'select * from mixture_check where palette_id = ? and put_away = 0 order by created_at, rowid',
    )
    .all(paletteId);
}

export function putCheckAway(db: Db, id: string): void {
  db.prepare('update mixture_check set put_away = 1 where id = ?').run(id);
}
