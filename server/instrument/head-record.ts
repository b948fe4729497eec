import { movingRanges } from '../../src/calibrate/tile/control-chart.ts';
import { judgeCheckTile } from '../../src/calibrate/tile/check-tile.ts';
import { ReadingRefused } from '../../src/calibrate/refusal.ts';
import type { HeadRecord, TileHistory } from '../api/head-record.ts';
import { gainStepsOf, newestHeadTests } from '../store/head-tests.ts';
import type { Db } from '../store/open-store.ts';
import type { CheckTileStore } from './check-tile.ts';
import { bandsOfHead } from './head-channels.ts';
import { noiseOfHead } from './head-noise.ts';
import type { HeadSession } from './head-session.ts';

/** The check tile of a head over its sessions, and whether the last of them lies where the others do. */
export function tileHistory(
  store: CheckTileStore,
  instrument: string,
  channels: readonly string[],
): TileHistory {
  const sessions = store.sessions(instrument).filter((s) => s.reflectance.length === channels.length);
  const times = sessions.map((s) => s.at);
  try {
    const verdict = judgeCheckTile(
      sessions.map((s) => s.reflectance),
      channels,
    );
    return {
      sessions: times,
      steady: verdict.steady,
      sentence: verdict.sentence,
      charts: verdict.charts.map(({ name, values, limits, signal }) => ({
        name,
        values: [...values],
        ranges: movingRanges(values),
        limits,
        signal,
      })),
    };
  } catch (error) {
    if (!(error instanceof ReadingRefused)) throw error;
    return { sessions: times, steady: null, sentence: error.message, charts: [] };
  }
}

/** What is known of the connected head from its own readings. */
export function headRecord(db: Db, tiles: CheckTileStore, session: HeadSession): HeadRecord {
  const { name } = session;
  return {
    instrument: name,
    tests: newestHeadTests(db, name).map(({ test, passed, body, at }) => ({
      test,
      passed: passed === 1,
      sentence: (JSON.parse(body) as { sentence: string }).sentence,
      at,
    })),
    gainSteps: gainStepsOf(db, name).map(({ fromGain, toGain, ratios, at }) => ({
      fromGain,
      toGain,
      ratios: [...ratios],
      at,
    })),
    noise: noiseOfHead(db, name, session.channels.length),
    bands: bandsOfHead(session.head),
    checkTile: tileHistory(tiles, name, session.channelNames),
  };
}
