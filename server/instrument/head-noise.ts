import { estimateNoise } from '../../src/calibrate/noise/instrument-noise.ts';
import type { HeadRecord } from '../api/head-record.ts';
import { openLadder, type OpenRung } from '../ladder/open-ladder.ts';
import { readOvers } from '../ladder/progress.ts';
import type { Db } from '../store/open-store.ts';
import { laddersReadBy } from '../store/readings.ts';
import { say } from '../api/sentences/instrument.ts';

/** Fewer repeats than this say too little about the head (common practice, no source); the fit asks for as many. */
const LEAST_REPEATS = 6;

/**
 * The noise of one reading by a head as its kept repeats on all ladders show it, the head put down afresh each time.
 * Null where there are too few.
 */
export function noiseOfHead(db: Db, instrument: string, channels: number): HeadRecord['noise'] {
  const groups = laddersReadBy(db, instrument)
    .flatMap((id) => openLadder(db, id).rungs)
    .flatMap((rung) => repeatsOf(rung, instrument, channels))
    .filter((group) => group.length > 1);
  if (groups.reduce((sum, group) => sum + group.length - 1, 0) < LEAST_REPEATS) return null;
  const { sigma, relative, degreesOfFreedom } = estimateNoise(groups);
  const sentence = say('scatter', { sigma: (100 * sigma).toFixed(2), relative: (100 * relative).toFixed(2) });
  return { sigma, relative, degreesOfFreedom, sentence };
}

function repeatsOf(rung: OpenRung, instrument: string, channels: number): number[][][] {
  const mine = rung.readings.filter(
    ({ state, row, values }) =>
      state === 'kept' &&
      values.length === channels &&
      (JSON.parse(row.raw) as { instrument?: string }).instrument === instrument,
  );
  return readOvers(rung).map((over) =>
    mine.filter(({ row }) => row.over_what === over).map(({ values }) => [...values]),
  );
}
