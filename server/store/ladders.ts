import type { Db } from './open-store.ts';

export interface LadderRow {
  readonly id: string;
  readonly palette_id: string;
  readonly tube_id: string;
  readonly white_tube_id: string;
  readonly plan: string;
  readonly started_at: string;
}

export function addLadder(db: Db, ladder: LadderRow): void {
  db.prepare(
    `insert into ladder (id, palette_id, tube_id, white_tube_id, plan, started_at)
     values (@id, @palette_id, @tube_id, @white_tube_id, @plan, @started_at)`,
  ).run(ladder);
}

export function ladderById(db: Db, id: string): LadderRow | undefined {
  return db.prepare<[string], LadderRow>('select * from ladder where id = ?').get(id);
}

export function laddersOfPalette(db: Db, paletteId: string): LadderRow[] {
  return db
    .prepare<[string], LadderRow>('select * from ladder where palette_id = ? order by started_at, rowid')
    .all(paletteId);
}

export function laddersOfTube(db: Db, tubeId: string): LadderRow[] {
  return db
    .prepare<[string], LadderRow>('select * from ladder where tube_id = ? order by started_at, rowid')
    .all(tubeId);
}
