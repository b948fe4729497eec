import type { Advice } from '../../src/fit/advice/advice.ts';
import { nextMeasurements } from '../../src/fit/advice/next-measurements.ts';
import type { PaletteFit, TubeFit } from '../../src/fit/palette-fit.ts';
import type { z } from 'zod';
import type { suggestionSchema, TubeFitAnswer } from '../api/fits.ts';
import type { FitJob } from './fit-job.ts';
import { say } from '../api/sentences/fitting.ts';

export type Suggestion = z.infer<typeof suggestionSchema>;

/** One of a kind: spots, drawdown, tint, check. */
const KINDS = 4;

/** What to measure next of a tube: rungs to mend first, then what buys most by the covariance. */
export function suggestionsFor(
  fit: PaletteFit,
  job: FitJob,
  tube: TubeFit,
  rungs: TubeFitAnswer['rungs'],
): Suggestion[] {
  const masstone = rungs.find((r) => r.share === 1)?.rungId ?? null;
  return [
    ...toMend(
      tube.evidence,
      rungs,
      tube.tube.id === fit.palette.white || fit.leftOut.some((rung) => rung.tube === tube.tube.id),
    ),
    ...nextMeasurements(fit, job.set, tube.tube.id, KINDS).map((advice) =>
      worthOf(advice, tube.tube.id, job.set.tubes, fit.palette.white, masstone),
    ),
  ];
}

function worthOf(
  advice: Advice,
  tubeId: string,
  tubes: FitJob['set']['tubes'],
  white: string,
  masstone: string | null,
): Suggestion {
  const { measurement, gain, sentence } = advice;
  const { kind, masses } = measurement;
  const fall = (range: 'darks' | 'middles' | 'lights'): number =>
    advice[range] ? advice[range].before - advice[range].after : -Infinity;
  const ranges = ['darks', 'middles', 'lights'] as const;
  const range = ranges.reduce((a, b) => (fall(b) > fall(a) ? b : a));
  const other = kind === 'check' ? tubes.find(({ id }) => id !== tubeId && id in masses) : undefined;
  const { before, after } = advice[range] ?? advice.all;
  return {
    rungId: kind === 'repeat' ? masstone : null,
    sentence,
    gain,
    next: {
      kind,
      parts: kind === 'tint' ? Math.round(masses[white]! / masses[tubeId]!) : null,
      otherTubeId: other?.id ?? null,
      otherLabel: other ? (other.label ?? other.id) : null,
      range,
      before,
      after,
    },
  };
}

/** What the rungs themselves call for, the one that disagrees most first. */
function toMend(evidence: TubeFit['evidence'], rungs: TubeFitAnswer['rungs'], enough: boolean): Suggestion[] {
  const said: Suggestion[] = [];
  const advise = (sentence: string, rungId: string | null = null): void =>
    void said.push({ rungId, sentence, gain: null, next: null });
  const odd = rungs
    .filter((r) => r.readsLike !== null)
    .toSorted((a, b) => Math.abs(b.lnRatioError) - Math.abs(a.lnRatioError));
  for (const rung of odd.slice(0, 2)) {
    advise(say('mend-rung', { rung: rung.name, reads: rung.readsLike! }), rung.rungId);
  }
  if (!enough && rungs.length < 4) {
    advise(say('few-rungs', { count: rungs.length }));
  }
  const once = rungs.filter((r) => r.repeats < 3);
  if (once.length > 0) advise(say('read-three-times', { rungs: once.map((r) => r.name).join(', ') }));
  if (evidence.readings === 'tristimulus') {
    advise(say('xyz-alone'));
  }
  return said;
}
