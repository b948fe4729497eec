/** The worker in which palettes are computed with, so that a page never stands still. */
import type { MixingPalette } from '../../../src/fit/palette.ts';
import { paletteOf } from '../../../src/profile/palette-of.ts';
import { filmsJob } from './films-job.ts';
import type { JobName, Jobs } from './jobs.ts';
import { limitsJob, oneMoreJob, valueStringJob } from './limits-jobs.ts';
import { additionJob, matchJob } from './match-job.ts';
import type { FromWorker, ToWorker } from './messages.ts';
import { mixFilmsJob } from './mix-films-job.ts';
import { nudgeJob } from './nudge-job.ts';
import { orderJob } from './order-job.ts';
import { highlightsJob, mudJob, partsJob, reachJob } from './parts-jobs.ts';
import { predictJob } from './predict-job.ts';
import { familiesJob, studyPoursJob, studyRecipesJob } from './study-jobs.ts';

export type Progress = (share: number) => void;

const jobs: {
  [N in JobName]: (palette: MixingPalette, ask: Jobs[N]['ask'], progress: Progress) => Jobs[N]['answer'];
} = {
  predict: predictJob,
  match: matchJob,
  addition: additionJob,
  mixFilms: mixFilmsJob,
  parts: partsJob,
  mud: mudJob,
  highlights: highlightsJob,
  reach: reachJob,
  nudge: nudgeJob,
  order: orderJob,
  limits: limitsJob,
  oneMore: oneMoreJob,
  valueString: valueStringJob,
  films: filmsJob,
  families: familiesJob,
  studyRecipes: studyRecipesJob,
  studyPours: studyPoursJob,
};

/** Progress is worth telling this often, ms. */
const TELL_EVERY = 80;

let palette: MixingPalette | undefined;

const send = (message: FromWorker): void => postMessage(message);

addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  if (data.type === 'palette') {
    palette = paletteOf(data.profile);
    return;
  }
  const { id, name, ask } = data;
  let told = 0;
  const progress: Progress = (share) => {
    const now = performance.now();
    if (now - told < TELL_EVERY) return;
    told = now;
    send({ type: 'progress', id, share });
  };
  try {
    if (!palette && name !== 'families') throw new Error('No palette is open; measure or import one first.');
    const job = jobs[name] as (
      p: MixingPalette | undefined,
      a: unknown,
      progress: Progress,
    ) => Jobs[JobName]['answer'];
    send({ type: 'answer', id, answer: job(palette, ask, progress) });
  } catch (cause) {
    send({ type: 'refusal', id, sentence: cause instanceof Error ? cause.message : String(cause) });
  }
});
