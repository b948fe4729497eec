import { ownTileReference } from '../../src/calibrate/tile/own-tile.ts';
import { PRACTICE_OWN_TILE } from '../../src/device/practice/surfaces.ts';
import type { ReadingForm } from '../api/readings.ts';
import type { NewTile, WhiteTile } from '../api/tiles.ts';
import { conflict, notFound, unusable } from '../problem.ts';
import { fromFile, fromTyped, type Incoming } from '../reading/incoming.ts';
import type { Db } from '../store/open-store.ts';
import {
  addTile,
  chooseTile,
  chosenTile,
  type TileBody,
  type TileRow,
  tileById,
  tilesOf,
} from '../store/tiles.ts';
import type { HeadSession } from './head-session.ts';
import { readTile } from './set-head.ts';
import { throughChannels } from './tile-reference.ts';
import { say } from '../api/sentences/instrument.ts';

const LEAST_PLACINGS = 3;

/** The tiles there are, and which the connected head is set on. */
export function tilesView(db: Db, session: HeadSession | undefined): WhiteTile[] {
  const chosen = session && chosenTile(db, session.name)?.id;
  return tilesOf(db).map((row) => {
    const body = JSON.parse(row.body) as TileBody;
    const values = session && throughChannels(session, row, body);
    return {
      id: row.id,
      name: row.name,
      origin: row.origin,
      instrument: row.instrument,
      wavelengths: body.wavelengths ? [...body.wavelengths] : null,
      values: [...body.values],
      sigma: body.sigma ? [...body.sigma] : null,
      inUse: row.id === chosen,
      usable: values !== undefined,
      sentence: sentenceFor(row, session, values?.reflectance),
      at: row.created_at,
    };
  });
}

function sentenceFor(
  row: TileRow,
  session: HeadSession | undefined,
  seen: readonly number[] | undefined,
): string {
  if (!session) return say('connect-to-use');
  if (!seen) return say('values-for', { head: String(row.instrument) });
  const [low, high] = [Math.min(...seen), Math.max(...seen)];
  const span =
    high - low < 0.0005 ? low.toFixed(3) : say('span', { low: low.toFixed(3), high: high.toFixed(3) });
  return say('head-sees', { span });
}

/** Sets the head on a tile from the next white on. @throws HttpProblem when it is not there or does not fit the head */
export function useTile(db: Db, session: HeadSession, id: string): void {
  const row = tileById(db, id);
  if (!row) throw notFound(say('no-tile'));
  if (!throughChannels(session, row, JSON.parse(row.body) as TileBody)) {
    throw conflict(say('tile-of-other', { tile: row.name, head: String(row.instrument) }));
  }
  chooseTile(db, session.name, id);
}

/** Enters a tile; with a head connected it is used from the next white on. @throws HttpProblem, ReadingRefused */
export function enterTile(db: Db, session: HeadSession | undefined, wanted: NewTile, at: string): void {
  const { name } = wanted;
  const row =
    wanted.from === 'placings'
      ? addTile(db, {
          name,
          origin: 'read',
          instrument: held(session).name,
          body: fromPlacings(held(session)),
          at,
        })
      : addTile(db, { name, origin: wanted.from === 'file' ? 'file' : 'typed', body: bodyOf(wanted), at });
  if (session) chooseTile(db, session.name, row.id);
}

function bodyOf(wanted: Exclude<NewTile, { from: 'placings' }>): TileBody {
  if (wanted.from === 'number') return { values: [wanted.reflectance] };
  const { reading }: Incoming =
    wanted.from === 'file'
      ? fromFile(wanted)
      : fromTyped(
          {
            kind: 'reflectance',
            geometry: wanted.geometry ?? '45/0',
            ...(wanted.scale ? { scale: wanted.scale } : {}),
            wavelengths: wanted.wavelengths,
            values: wanted.values,
          },
          'typed',
        );
  const form = reading.form as ReadingForm;
  const { values } = reading;
  if (form.kind !== 'spectral') throw unusable(say('sheet-colour'));
  const odd = values.find((v) => !(v > 0.2 && v <= 1.1));
  if (odd !== undefined) {
    throw unusable(say('sheet-range', { value: odd.toFixed(3) }), 'values');
  }
  return { values: [...values], wavelengths: [...form.wavelengths], note: form.geometry };
}

/** One placing of the painter's own tile. @throws DeviceFault, ReadingRefused, HttpProblem */
export async function placeOwnTile(session: HeadSession): Promise<{ placings: number; sentence: string }> {
  if (session.scale.hasWhite && !session.tileKnown) {
    throw conflict(say('set-on-unknown'));
  }
  const values = await readTile(session, 'own tile', { kind: 'swatch', reflectance: PRACTICE_OWN_TILE });
  const ownTile = [...(session.placings.ownTile ?? []), values];
  session.placings = { ...session.placings, ownTile };
  const n = ownTile.length;
  const sentence =
    n < LEAST_PLACINGS
      ? say('placings-left', { count: n, least: LEAST_PLACINGS })
      : say('placings', { count: n });
  return { placings: n, sentence };
}

function fromPlacings(session: HeadSession): TileBody {
  const { ownTile = [] } = session.placings;
  const { reflectance, sigma } = ownTileReference(ownTile, session.tile);
  session.placings = { ...session.placings, ownTile: [] };
  return { values: [...reflectance], sigma: [...sigma], channels: [...session.channelNames] };
}

function held(session: HeadSession | undefined): HeadSession {
  if (session) return session;
  throw conflict(say('no-instrument-tile'), '/problems/no-instrument');
}
