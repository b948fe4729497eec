import type { Db } from './open-store.ts';
import { readSetting, writeSetting } from './settings.ts';

export interface ProfileRow {
  readonly id: string;
  readonly palette_id: string;
  readonly fit_id: string | null;
  readonly origin: 'fit' | 'import';
  readonly title: string;
  readonly document: string;
  readonly created_at: string;
}

export function addProfile(db: Db, profile: ProfileRow): void {
  db.prepare(
    `insert into profile (id, palette_id, fit_id, origin, title, document, created_at)
     values (@id, @palette_id, @fit_id, @origin, @title, @document, @created_at)`,
  ).run(profile);
}

export function profileById(db: Db, id: string): ProfileRow | undefined {
  return db.prepare<[string], ProfileRow>('select * from profile where id = ?').get(id);
}

export function profileOfFit(db: Db, fitId: string): ProfileRow | undefined {
  return db.prepare<[string], ProfileRow>('select * from profile where fit_id = ?').get(fitId);
}

export function profilesOf(db: Db, paletteId: string): ProfileRow[] {
  return db
    .prepare<[string], ProfileRow>(
      'select * from profile where palette_id = ? order by created_at desc, rowid desc',
    )
    .all(paletteId);
}

/** The profile mixing works from: the one chosen for the palette, else the newest. */
export function currentProfile(db: Db, paletteId: string): ProfileRow | undefined {
  const chosen = readSetting(db, `current profile of ${paletteId}`);
  const row = typeof chosen === 'string' ? profileById(db, chosen) : undefined;
  return row ?? profilesOf(db, paletteId)[0];
}

export function makeProfileCurrent(db: Db, profile: ProfileRow): void {
  writeSetting(db, `current profile of ${profile.palette_id}`, profile.id);
}
