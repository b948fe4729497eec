import type { Advice } from '../../src/fit/advice/advice.ts';
import { nextMeasurements } from '../../src/fit/advice/next-measurements.ts';
import type { PaletteFit, TubeFit } from '../../src/fit/palette-fit.ts';
import type { z } from 'zod';
import type { suggestionSchema, TubeFitAnswer } from '../api/fits.ts';
import type { FitJob } from './fit-job.ts';

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
    ...toMend(tube.evidence, rungs, tube.tube.id === fit.palette.white),
    ...nextMeasurements(fit, job.set, tube.tube.id, KINDS).map((advice) =>
      worthOf(advice, tube.tube.id, fit.palette.white, masstone),
    ),
  ];
}

function worthOf(advice: Advice, tubeId: string, white: string, masstone: string | null): Suggestion {
  const { measurement, gain, sentence } = advice;
  const { kind, masses } = measurement;
  const fall = (range: 'darks' | 'middles' | 'lights'): number =>
    advice[range] ? advice[range].before - advice[range].after : -Infinity;
  const ranges = ['darks', 'middles', 'lights'] as const;
  const range = ranges.reduce((a, b) => (fall(b) > fall(a) ? b : a));
  const { before, after } = advice[range] ?? advice.all;
  return {
    rungId: kind === 'repeat' ? masstone : null,
    sentence,
    gain,
    next: {
      kind,
      parts: kind === 'tint' ? Math.round(masses[white]! / masses[tubeId]!) : null,
      otherTubeId: kind === 'check' ? Object.keys(masses).find((id) => id !== tubeId)! : null,
      range,
      before,
      after,
    },
  };
}

/** What the rungs themselves call for, the one that disagrees most first. */
function toMend(
  evidence: TubeFit['evidence'],
  rungs: TubeFitAnswer['rungs'],
  isWhite: boolean,
): Suggestion[] {
  const said: Suggestion[] = [];
  const say = (sentence: string, rungId: string | null = null): void =>
    void said.push({ rungId, sentence, gain: null, next: null });
  const odd = rungs
    .filter((r) => r.readsLike !== null)
    .toSorted((a, b) => Math.abs(b.lnRatioError) - Math.abs(a.lnRatioError));
  for (const rung of odd.slice(0, 2)) {
    say(
      `The ${rung.name} ${rung.readsLike}: mix and draw it down again, and weigh it on a finer scale if you can.`,
      rung.rungId,
    );
  }
  if (!isWhite && rungs.length < 4) {
    say(`This tube has ${rungs.length} rungs; a masstone and tints of 1:1, 1:4 and 1:16 tell K from S.`);
  }
  const once = rungs.filter((r) => r.repeats < 3);
  if (once.length > 0)
    say(`Read ${once.map((r) => r.name).join(', ')} three times: the noise is a guess otherwise.`);
  if (evidence.readings === 'tristimulus') {
    say('Readings in XYZ alone leave the curves loose; a few bands or a spectrum would tighten them.');
  }
  return said;
}
