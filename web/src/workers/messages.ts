import type { PaletteProfile } from '../../../src/profile/schema.ts';
import type { JobName, Jobs } from './jobs.ts';

/** To the worker: the palette to work from, then any number of jobs. */
export type ToWorker =
  | { readonly type: 'palette'; readonly profile: PaletteProfile }
  | {
      [N in JobName]: {
        readonly type: 'job';
        readonly id: number;
        readonly name: N;
        readonly ask: Jobs[N]['ask'];
      };
    }[JobName];

/** From the worker, for the job of that id. */
export type FromWorker =
  | { readonly type: 'progress'; readonly id: number; readonly share: number }
  | { readonly type: 'answer'; readonly id: number; readonly answer: Jobs[JobName]['answer'] }
  /** One sentence: what was asked, what is allowed, what to do. */
  | { readonly type: 'refusal'; readonly id: number; readonly sentence: string };
