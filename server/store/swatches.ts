import type { Db } from './open-store.ts';

export interface SwatchRow {
  readonly id: string;
  readonly palette_id: string;
  readonly ladder_id: string | null;
  readonly check_id: string | null;
  readonly kind: 'rung' | 'card' | 'check' | 'file';
  readonly position: number;
  readonly name: string;
  readonly white_parts: number | null;
  readonly parts: string;
  readonly painted: string;
  readonly film: 'opaque' | 'card';
  readonly side: 'black' | 'white' | null;
}

export type NewSwatch = Omit<SwatchRow, 'position'>;

export function addSwatch(db: Db, swatch: NewSwatch): void {
  db.prepare(
    `insert into swatch (id, palette_id, ladder_id, check_id, kind, position, name, white_parts, parts, painted, film, side)
     values (@id, @palette_id, @ladder_id, @check_id, @kind,
       (select coalesce(max(position), 0) + 1 from swatch where palette_id = @palette_id),
       @name, @white_parts, @parts, @painted, @film, @side)`,
  ).run(swatch);
}

export function swatchById(db: Db, id: string): SwatchRow | undefined {
  return db.prepare<[string], SwatchRow>('select * from swatch where id = ?').get(id);
}

export function swatchesOfLadder(db: Db, ladderId: string): SwatchRow[] {
  return db
    .prepare<[string], SwatchRow>('select * from swatch where ladder_id = ? order by position')
    .all(ladderId);
}

export function swatchOfCheck(db: Db, checkId: string): SwatchRow | undefined {
  return db.prepare<[string], SwatchRow>('select * from swatch where check_id = ?').get(checkId);
}

export function fileSwatchesOf(db: Db, paletteId: string): SwatchRow[] {
  return db
    .prepare<[string], SwatchRow>(
      "select * from swatch where palette_id = ? and kind = 'file' order by position",
    )
    .all(paletteId);
}

/** Bare cards that came with a file. */
export function cardsOfFiles(db: Db, paletteId: string): SwatchRow[] {
  return db
    .prepare<[string], SwatchRow>(
      "select * from swatch where palette_id = ? and kind = 'card' and ladder_id is null order by position",
    )
    .all(paletteId);
}
