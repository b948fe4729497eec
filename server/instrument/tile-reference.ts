import { responseRows, readingOf } from '../../src/fit/observe/response-rows.ts';
import { GRID_NM } from '../../src/colour/grid.ts';
import { interpolationRows } from '../../src/colour/interpolation.ts';
import type { TileBody, TileRow } from '../store/tiles.ts';
import { formOfHead } from './head-channels.ts';
import type { HeadSession } from './head-session.ts';

/** A tile's values as the channels of a head see them. */
export interface TileValues {
  readonly reflectance: number[];
  /** Standard uncertainty per channel, where it is known. */
  readonly sigma?: number[];
}

/**
 * A tile's sheet through the channels of a head: each channel sees its own window of the curve; beyond the sheet's ends
 * the end value is held. Undefined for a tile that was read by another head, or other channels.
 */
export function throughChannels(
  session: HeadSession,
  tile: Pick<TileRow, 'instrument'>,
  body: TileBody,
): TileValues | undefined {
  const { channelNames } = session;
  const { values, sigma, wavelengths } = body;
  if (wavelengths) {
    const rows = responseRows(formOfHead(session.head));
    const through = (curve: readonly number[]): number[] => {
      const onGrid = readingOf(interpolationRows(wavelengths, GRID_NM), curve);
      return [...readingOf(rows, onGrid)];
    };
    return { reflectance: through(values), ...(sigma ? { sigma: through(sigma) } : {}) };
  }
  if (values.length === 1 && body.channels === undefined)
    return { reflectance: channelNames.map(() => values[0]!) };
  if (tile.instrument !== session.name || body.channels?.join() !== channelNames.join()) return undefined;
  return { reflectance: [...values], ...(sigma ? { sigma: [...sigma] } : {}) };
}
