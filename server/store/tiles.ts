import { newId } from './ids.ts';
import type { Db } from './open-store.ts';
import { readSetting, writeSetting } from './settings.ts';

export interface TileBody {
  /** Reflectance factors: one, one per wavelength, or one per channel of `instrument`. */
  readonly values: readonly number[];
  /** nm, ascending; absent where the values are per channel or one for all. */
  readonly wavelengths?: readonly number[];
  /** Standard uncertainty per value, absolute. */
  readonly sigma?: readonly number[];
  /** Names of the channels a read tile's values belong to. */
  readonly channels?: readonly string[];
  /** What was said of where the values are from. */
  readonly note?: string;
}

export interface TileRow {
  readonly id: string;
  readonly name: string;
  readonly origin: 'typed' | 'file' | 'read';
  readonly instrument: string | null;
  readonly body: string;
  readonly created_at: string;
}

export function addTile(
  db: Db,
  tile: {
    readonly name: string;
    readonly origin: TileRow['origin'];
    readonly instrument?: string;
    readonly body: TileBody;
    readonly at: string;
  },
): TileRow {
  const id = newId('tile');
  db.prepare(
    'insert into tile (id, name, origin, instrument, body, created_at) values (?, ?, ?, ?, ?, ?)',
  ).run(id, tile.name, tile.origin, tile.instrument ?? null, JSON.stringify(tile.body), tile.at);
  return tileById(db, id)!;
}

/** Newest first; those put away are left out. */
export function tilesOf(db: Db): TileRow[] {
  return db.prepare<[], TileRow>('select * from tile where put_away = 0 order by rowid desc').all();
}

export function tileById(db: Db, id: string): TileRow | undefined {
  return db.prepare<[string], TileRow>('select * from tile where id = ? and put_away = 0').get(id);
}

/** Readings made against it keep the values they were worked out with. */
export function putTileAway(db: Db, id: string): void {
  db.prepare('update tile set put_away = 1 where id = ?').run(id);
}

const SETTING = 'white tiles';

/** The tile a head is set on, where one was chosen and is still there. */
export function chosenTile(db: Db, instrument: string): TileRow | undefined {
  const chosen = (readSetting(db, SETTING) ?? {}) as Record<string, string>;
  const id = chosen[instrument];
  return id === undefined ? undefined : tileById(db, id);
}

/** Chooses the tile for a head; undefined: the one the program assumes. */
export function chooseTile(db: Db, instrument: string, id: string | undefined): void {
  const { [instrument]: _, ...others } = (readSetting(db, SETTING) ?? {}) as Record<string, string>;
  writeSetting(db, SETTING, id === undefined ? others : { ...others, [instrument]: id });
}
