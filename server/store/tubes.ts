import type { Db } from './open-store.ts';
import { freeId, slug } from './ids.ts';

export interface TubeRow {
  readonly id: string;
  readonly palette_id: string;
  readonly position: number;
  readonly label: string;
  readonly pigments: string;
  readonly batch: string;
  readonly bought: string | null;
  readonly drying: 'fresh' | 'touch-dry' | 'dry' | 'unknown';
  readonly role: 'white' | null;
  readonly density: number | null;
  readonly note: string;
  readonly practice_paint_id: string | null;
  readonly replaces: string | null;
  readonly put_away: number;
  readonly created_at: string;
}

export interface TubeWords {
  readonly label: string;
  readonly pigments: readonly string[];
  readonly batch: string;
  readonly bought: string | null;
  readonly drying: TubeRow['drying'];
  readonly role: 'white' | null;
  readonly density: number | null;
  readonly note: string;
  readonly practicePaintId: string | null;
  readonly replaces: string | null;
}

export function tubesOf(db: Db, paletteId: string): TubeRow[] {
  return db
    .prepare<[string], TubeRow>('select * from tube where palette_id = ? order by position')
    .all(paletteId);
}

export function tubeById(db: Db, id: string): TubeRow | undefined {
  return db.prepare<[string], TubeRow>('select * from tube where id = ?').get(id);
}

export function whiteOf(db: Db, paletteId: string): TubeRow | undefined {
  return db
    .prepare<[string], TubeRow>("select * from tube where palette_id = ? and role = 'white'")
    .get(paletteId);
}

/** Adds a tube; its id is the wanted one, else made of its label, and unique in the store. */
export function addTube(db: Db, paletteId: string, words: TubeWords, at: string, wantedId?: string): TubeRow {
  const id = freeId(wantedId ?? slug(words.label), (candidate) => tubeById(db, candidate) !== undefined);
  db.prepare(
    `insert into tube (id, palette_id, position, label, pigments, batch, bought, drying, role, density, note,
       practice_paint_id, replaces, created_at)
     values (@id, @paletteId, (select coalesce(max(position), 0) + 1 from tube where palette_id = @paletteId),
       @label, @pigments, @batch, @bought, @drying, @role, @density, @note, @practicePaintId, @replaces, @at)`,
  ).run({ ...words, pigments: JSON.stringify(words.pigments), id, paletteId, at });
  return tubeById(db, id)!;
}

export type TubeChange = { readonly [name in keyof TubeWords]?: TubeWords[name] | undefined } & {
  readonly putAway?: boolean | undefined;
};

export function changeTube(db: Db, id: string, change: TubeChange): void {
  const now = tubeById(db, id)!;
  const given = Object.fromEntries(
    Object.entries(change).filter(([, value]) => value !== undefined),
  ) as TubeChange;
  db.prepare(
    `update tube set label = @label, pigments = @pigments, batch = @batch, bought = @bought, drying = @drying,
       role = @role, density = @density, note = @note, put_away = @putAway where id = @id`,
  ).run({
    id,
    label: given.label ?? now.label,
    pigments: given.pigments ? JSON.stringify(given.pigments) : now.pigments,
    batch: given.batch ?? now.batch,
    bought: 'bought' in given ? given.bought : now.bought,
    drying: given.drying ?? now.drying,
    role: 'role' in given ? given.role : now.role,
    density: 'density' in given ? given.density : now.density,
    note: given.note ?? now.note,
    putAway: given.putAway === undefined ? now.put_away : given.putAway ? 1 : 0,
  });
}

export function deleteTube(db: Db, id: string): void {
  db.prepare('delete from tube where id = ?').run(id);
}

/** True once anything was painted with the tube. */
export function tubeIsUsed(db: Db, id: string): boolean {
  const inLadder = db
    .prepare<[string, string], { n: number }>(
      'select count(*) as n from ladder where tube_id = ? or white_tube_id = ?',
    )
    .get(id, id)!.n;
  const inJson = db
    .prepare<{ id: string }, { n: number }>(
      `select (select count(*) from mixture_check, json_each(mixture_check.masses) where json_each.key = @id)
            + (select count(*) from swatch, json_tree(swatch.painted)
               where json_tree.key = @id or (json_tree.key = 'tube' and json_tree.value = @id)) as n`,
    )
    .get({ id })!.n;
  return inLadder + inJson > 0;
}
