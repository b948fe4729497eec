import type { MixingPalette } from '../../../src/fit/palette.ts';
import {
  type Highlight,
  type Masses,
  type MudBetween,
  type Reach,
  type Scale,
  type Wanted,
  type WholeParts,
  betweenTwo,
  canPour,
  highlights,
  mostPartsOf,
  predictMix,
  reachOf,
  wholeParts,
} from '../../../src/mix/index.ts';

export interface PartsAsk {
  /** The recipe whose tubes are counted out. */
  readonly masses: Masses;
  /** Absent: the mix itself is what is wanted. */
  readonly wanted?: Wanted;
  readonly basis: 'mass' | 'volume';
  /** g/ml by tube id, where known. */
  readonly densities: Masses;
}
/** The nearest few, fewest parts first, each longer one nearer. */
export type PartsAnswer = readonly WholeParts[];

const SHOWN = 5;

export function partsJob(palette: MixingPalette, ask: PartsAsk): PartsAnswer {
  const { masses, basis, densities } = ask;
  const wanted = ask.wanted ?? { spectrum: predictMix(palette, masses).reflectance };
  const mostParts = mostPartsOf(Object.keys(masses).length);
  return wholeParts(palette, wanted, masses, { basis, densities, mostParts }).slice(-SHOWN);
}

export interface MudAsk {
  readonly one: string;
  readonly two: string;
}
export type MudAnswer = MudBetween;

export function mudJob(palette: MixingPalette, { one, two }: MudAsk): MudAnswer {
  return betweenTwo(palette, one, two, { points: 11 });
}

export interface HighlightsAsk {
  readonly grams: number;
  readonly scale: Scale;
  readonly only: readonly string[];
}
/** Least value lost first; none where no tube warms the white. */
export type HighlightsAnswer = readonly Highlight[];

export function highlightsJob(
  palette: MixingPalette,
  { grams, scale, only }: HighlightsAsk,
): HighlightsAnswer {
  return highlights(palette, { grams, only, ...(canPour(grams, scale) ? { scale } : {}) });
}

export interface ReachAsk {
  readonly wanted: Wanted;
  readonly only: readonly string[];
}
export type ReachAnswer = Reach;

export function reachJob(palette: MixingPalette, { wanted, only }: ReachAsk): ReachAnswer {
  return reachOf(palette, wanted, { only });
}
