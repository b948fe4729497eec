import type { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import { seen } from '../../src/device/practice/sensor.ts';
import { PRACTICE_WHITE_TILE } from '../../src/device/practice/surfaces.ts';
import type { Finding } from '../api/words.ts';
import { unusable } from '../problem.ts';

/**
 * Reflectance of the white tile per channel: as given, as the practice tile's own sheet has it, or 1 where nothing is
 * known, which is said and never silent.
 * @param tile one number, one per channel, or nothing known
 * @throws HttpProblem when there is not one number per channel
 */
export function tileValues(
  tile: number | readonly number[] | undefined,
  channels: readonly number[],
  practice: PracticeInstrument | undefined,
): { reflectance: number[]; note: Finding | undefined } {
  if (typeof tile === 'object') {
    if (tile.length !== channels.length) {
      throw unusable(
        `The tile has ${tile.length} numbers and the head ${channels.length} channels; give one per channel.`,
        'reflectance',
      );
    }
    return { reflectance: [...tile], note: undefined };
  }
  if (typeof tile === 'number') return { reflectance: channels.map(() => tile), note: undefined };
  if (practice) {
    return {
      reflectance: channels.map((i) => seen(practice.sensor.channels[i]!, PRACTICE_WHITE_TILE)),
      note: undefined,
    };
  }
  return {
    reflectance: channels.map(() => 1),
    note: {
      level: 'note',
      code: 'tile-unknown',
      sentence:
        'The reflectance of the white tile is not known and is taken as 1; every reading is relative to it until you give its values.',
    },
  };
}
