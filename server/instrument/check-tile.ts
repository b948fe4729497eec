import { judgeCheckTile } from '../../src/calibrate/tile/check-tile.ts';
import { ReadingRefused } from '../../src/calibrate/refusal.ts';

/** One reading of the check tile. */
export interface TileSession {
  /** ISO 8601, UTC. */
  readonly at: string;
  readonly reflectance: readonly number[];
}

/** Earlier readings of the check tile by instrument, oldest first; the store keeps them. */
export interface CheckTileStore {
  readonly sessions: (instrument: string) => readonly TileSession[];
  readonly add: (instrument: string, reflectance: readonly number[]) => void;
}

/** Keeps this reading of the check tile and compares it with the ones before. */
export function judgeTile(
  store: CheckTileStore,
  instrument: string,
  channels: readonly string[],
  reflectance: Float64Array,
): { good: boolean; sentence: string } {
  const before = store.sessions(instrument).filter((s) => s.reflectance.length === reflectance.length);
  store.add(instrument, [...reflectance]);
  try {
    const verdict = judgeCheckTile([...before.map((s) => s.reflectance), [...reflectance]], channels);
    return { good: verdict.steady, sentence: verdict.sentence };
  } catch (error) {
    if (error instanceof ReadingRefused && error.reason === 'too-few')
      return { good: true, sentence: error.message };
    throw error;
  }
}
