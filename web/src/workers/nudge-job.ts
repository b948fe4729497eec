import type { MixingPalette } from '../../../src/fit/palette.ts';
import { type Masses, type NudgeAddition, nudges } from '../../../src/mix/index.ts';

/** Grams by tube id. */
export interface NudgeAsk {
  readonly masses: Masses;
}
/** The least paint for one just-visible step each way; a way no addition can make is left out. */
export type NudgeAnswer = readonly NudgeAddition[];

export function nudgeJob(palette: MixingPalette, { masses }: NudgeAsk): NudgeAnswer {
  return nudges(palette, masses);
}
