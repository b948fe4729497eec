import { judgeCheckTile } from '../../src/calibrate/tile/check-tile.ts';
import { ReadingRefused } from '../../src/calibrate/refusal.ts';

/** Earlier readings of the check tile by instrument; the store keeps them. */
export interface CheckTileStore {
  readonly sessions: (instrument: string) => readonly (readonly number[])[];
  readonly add: (instrument: string, reflectance: readonly number[]) => void;
}

/** Keeps this reading of the check tile and compares it with the ones before. */
export function judgeTile(
  store: CheckTileStore,
  instrument: string,
  channels: readonly string[],
  reflectance: Float64Array,
): { good: boolean; sentence: string } {
  const before = store.sessions(instrument).filter((session) => session.length === reflectance.length);
  store.add(instrument, [...reflectance]);
  try {
    const verdict = judgeCheckTile([...before, [...reflectance]], channels);
    return { good: verdict.steady, sentence: verdict.sentence };
  } catch (error) {
    if (error instanceof ReadingRefused && error.reason === 'too-few')
      return { good: true, sentence: error.message };
    throw error;
  }
}
