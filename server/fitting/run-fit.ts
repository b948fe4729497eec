import { fitPalette } from '../../src/fit/fit-palette.ts';
import { profileFromFit } from '../../src/profile/from-fit.ts';
import { readProfile } from '../../src/profile/read.ts';
import { writeProfile } from '../../src/profile/write.ts';
import type { FitResult } from '../api/fits.ts';
import type { FitJob } from './fit-job.ts';
import { fitResultView } from './fit-result-view.ts';
import { say } from '../api/sentences/fitting.ts';

/** One fit from a swatch set to a profile's text and what the Constants screen shows. */
export function runFit(
  job: FitJob,
  progress: (done: number, sentence: string) => void,
): { profile: string; result: Omit<FitResult, 'fit'> } {
  progress(0, say('fitting', { tubes: job.set.tubes.length, swatches: job.set.swatches.length }));
  const fit = fitPalette(job.set);
  progress(0.9, say('writing'));
  const profile = profileFromFit(fit, {
    title: job.title,
    created: job.created,
    generator: { name: 'tintladder', version: job.version },
    provenance: job.provenance,
  });
  const text = writeProfile(profile);
  // What is kept must be what can be read again.
  readProfile(text);
  return { profile: text, result: fitResultView(fit, job) };
}
