import { estimateNoise } from '../../src/calibrate/noise/instrument-noise.ts';
import type { ReadingNoise } from '../../src/calibrate/swatch-set/schema.ts';
import type { OpenLadder } from '../ladder/open-ladder.ts';
import { readOvers } from '../ladder/progress.ts';
import type { SetDraft } from './set-draft.ts';

/** Fewer repeats than this say too little about the head (common practice, no source). */
const LEAST_REPEATS = 6;

/**
 * The noise of one reading as the repeats of these ladders show it, the head put down afresh each time. Undefined
 * where there are too few repeats by a head: the fit's own assumption stands then.
 */
export function benchNoise(draft: SetDraft, ladders: readonly OpenLadder[]): ReadingNoise | undefined {
  const groups = ladders
    .flatMap((ladder) => ladder.rungs)
    .flatMap((rung) => readOvers(rung).map((over) => draft.kept(rung.readings, over)))
    .map((kept) => kept.filter(({ row }) => row.source === 'head' || row.source === 'practice'))
    .filter((kept) => kept.length > 1)
    .map((kept) => kept.map(({ values }) => values));
  if (groups.reduce((sum, group) => sum + group.length - 1, 0) < LEAST_REPEATS) return undefined;
  const { sigma, relative } = estimateNoise(groups);
  return { sigma, relative };
}
