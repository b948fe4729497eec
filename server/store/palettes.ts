import type { Db } from './open-store.ts';
import { newId } from './ids.ts';
import { readSetting, writeSetting } from './settings.ts';

export interface PaletteRow {
  readonly id: string;
  readonly title: string;
  readonly note: string;
  readonly demo: number;
  readonly created_at: string;
}

export function allPalettes(db: Db): PaletteRow[] {
  return db.prepare<[], PaletteRow>('select * from palette order by created_at, rowid').all();
}

export function paletteById(db: Db, id: string): PaletteRow | undefined {
  return db.prepare<[string], PaletteRow>('select * from palette where id = ?').get(id);
}

export function addPalette(
  db: Db,
  palette: { title: string; note: string; demo: boolean; at: string },
): PaletteRow {
  const id = newId('palette');
  db.prepare('insert into palette (id, title, note, demo, created_at) values (?, ?, ?, ?, ?)').run(
    id,
    palette.title,
    palette.note,
    palette.demo ? 1 : 0,
    palette.at,
  );
  return paletteById(db, id)!;
}

export function changePalette(
  db: Db,
  id: string,
  change: { title?: string | undefined; note?: string | undefined },
): void {
  const now = paletteById(db, id)!;
  db.prepare('update palette set title = ?, note = ? where id = ?').run(
    change.title ?? now.title,
    change.note ?? now.note,
    id,
  );
}

const CURRENT = 'current palette';

export function currentPaletteId(db: Db): string | undefined {
  const chosen = readSetting(db, CURRENT);
  if (typeof chosen === 'string' && paletteById(db, chosen)) return chosen;
  return allPalettes(db)[0]?.id;
}

export function makePaletteCurrent(db: Db, id: string): void {
  writeSetting(db, CURRENT, id);
}
