import type { MixingPalette } from '../../../src/fit/palette.ts';
import { type Masses, type PourStep, orderOfAddition, tubeSet } from '../../../src/mix/index.ts';

/** Grams by tube id. */
export interface OrderAsk {
  readonly masses: Masses;
}
/** The palest tube that is a good part of the mix first, then from weak to strong. */
export type OrderAnswer = readonly PourStep[];

export function orderJob(palette: MixingPalette, { masses }: OrderAsk): OrderAnswer {
  return orderOfAddition(tubeSet(palette), masses);
}
