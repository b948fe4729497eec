import type { MixingPalette } from '../../../src/fit/palette.ts';
import { type MixPrediction, predictMix } from '../../../src/mix/index.ts';

/** Masses by tube id in any one unit. */
export interface PredictAsk {
  readonly masses: Readonly<Record<string, number>>;
}

/** D65/10deg, with its interval; the reflectance is there for any other lamp. */
export type PredictAnswer = MixPrediction;

export function predictJob(palette: MixingPalette, { masses }: PredictAsk): PredictAnswer {
  return predictMix(palette, masses);
}
