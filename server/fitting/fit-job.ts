import type { FitResult } from '../api/fits.ts';
import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { say } from '../api/sentences/fitting.ts';

/** What a worker is given, all plain data. */
export interface FitJob {
  readonly set: SwatchSet;
  readonly created: string;
  readonly version: string;
  readonly title: string;
  /** Which readings and settings it comes from; goes into the profile's provenance. */
  readonly provenance: Readonly<Record<string, unknown>>;
  /** Rung of the bench behind each swatch id of the set, and its name. */
  readonly rungs: Readonly<Record<string, { readonly rungId: string | null; readonly name: string }>>;
}

export type FitMessage =
  | { readonly kind: 'progress'; readonly done: number; readonly sentence: string }
  | { readonly kind: 'complete'; readonly profile: string; readonly result: Omit<FitResult, 'fit'> }
  | { readonly kind: 'failed'; readonly sentence: string; readonly fault: boolean };

/** Said to the painter when the program is at fault; the log has the rest. */
export const FAULT_SENTENCE = say('fault');
