import { seen } from '../../src/device/practice/sensor.ts';
import { PRACTICE_WHITE_TILE } from '../../src/device/practice/surfaces.ts';
import type { Finding } from '../api/words.ts';
import { unusable } from '../problem.ts';
import type { Db } from '../store/open-store.ts';
import { chosenTile, type TileBody } from '../store/tiles.ts';
import type { HeadSession } from './head-session.ts';
import { throughChannels, type TileValues } from './tile-reference.ts';
import { say } from '../api/sentences/instrument.ts';

/**
 * Reflectance of the white tile per channel: as given, as the tile chosen for this head has it, as the practice tile's
 * own sheet has it, or 1 where nothing is known, which is said and never silent.
 * @param tile one number, one per channel, or nothing said
 * @throws HttpProblem when there is not one number per channel
 */
export function tileValues(
  session: HeadSession,
  db: Db,
  tile: number | readonly number[] | undefined,
): TileValues & { readonly note: Finding | undefined; readonly known: boolean } {
  const { channels, practice } = session;
  const known = { note: undefined, known: true };
  if (typeof tile === 'object') {
    if (tile.length !== channels.length) {
      throw unusable(say('tile-numbers', { numbers: tile.length, channels: channels.length }), 'reflectance');
    }
    return { reflectance: [...tile], ...known };
  }
  if (typeof tile === 'number') return { reflectance: channels.map(() => tile), ...known };
  const chosen = chosenTile(db, session.name);
  const values = chosen && throughChannels(session, chosen, JSON.parse(chosen.body) as TileBody);
  if (values) return { ...values, ...known };
  if (practice) {
    const { sensor } = practice;
    return { reflectance: channels.map((i) => seen(sensor.channels[i]!, PRACTICE_WHITE_TILE)), ...known };
  }
  return {
    reflectance: channels.map(() => 1),
    known: false,
    note: {
      level: 'note',
      code: 'tile-unknown',
      sentence: say('tile-unknown'),
    },
  };
}
