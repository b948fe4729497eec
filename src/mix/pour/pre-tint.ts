import { type Blend, unblended, withBlends } from '../blend.ts';
import type { Masses } from '../film-stack.ts';
import { searchOn } from '../match/candidates.ts';
import { type ColourSplit, splitDifference } from '../match/difference.ts';
import type { WantedColour } from '../match/wanted.ts';
import { type MixPrediction, predictMix } from '../predict-mix.ts';
import { differenceGoal } from '../search/goal.ts';
import { type TubeSet, tubeIndex } from '../tube-set.ts';
import { type Scale, scaleSteps } from './scale.ts';
import { descendInSteps } from './whole-steps.ts';
import { say } from '../sentences.ts';

/** Advice: let a strong tube down first, then pour the tint. */
export interface PreTint {
  readonly strong: string;
  /** The tube it is let down with. */
  readonly light: string;
  /** Parts of the light tube to one of the strong, by mass. */
  readonly parts: number;
  /** What to weigh for the pre-tint, grams. */
  readonly make: Masses;
  /** Grams of the pre-tint the recipe takes. */
  readonly pour: number;
  /** The recipe with it: grams of the other tubes. */
  readonly masses: Masses;
  /** CIEDE2000 from the wanted colour of the recipe made that way, and how it differs. */
  readonly deltaE00: number;
  readonly split: ColourSplit;
  readonly prediction: MixPrediction;
}

/** Ratios worth making, in parts of the light tube to one of the strong. */
const RATIOS = [4, 9, 19, 49, 99];

/**
 * For an exact recipe (`grams`) with tubes under the smallest pour: which of them to let down first, at the least
 * dilution at which its pour can be weighed well, so that the mix comes nearest. Undefined where none helps (the light
 * tube is too little itself).
 */
export function preTint(
  set: TubeSet,
  wanted: WantedColour,
  grams: Masses,
  scale: Scale,
): PreTint | undefined {
  const { smallestPour } = scaleSteps(scale);
  const ids = Object.keys(grams);
  if (ids.length < 2) return undefined;
  const light = ids.reduce((a, b) => (grams[b]! > grams[a]! ? b : a));
  return ids
    .filter((id) => id !== light && grams[id]! < smallestPour)
    .flatMap((strong) => letDown(set, wanted, grams, scale, strong, light) ?? [])
    .reduce<PreTint | undefined>((a, b) => (a && a.deltaE00 <= b.deltaE00 ? a : b), undefined);
}

function letDown(
  set: TubeSet,
  wanted: WantedColour,
  grams: Masses,
  scale: Scale,
  strong: string,
  light: string,
): PreTint | undefined {
  const { step, least, smallestPour } = scaleSteps(scale);
  const ids = Object.keys(grams);
  const parts = RATIOS.find(
    (r) => grams[strong]! * (1 + r) >= smallestPour && grams[strong]! * r <= grams[light]!,
  );
  if (parts === undefined) return undefined;
  const strongGrams = Math.ceil(smallestPour / step - 1e-9) * step;
  const enough = Math.max(1, Math.ceil(grams[strong]! / strongGrams));
  const tint: Blend = { id: say('pre-tint', { tube: strong }), masses: { [strong]: 1, [light]: parts } };
  const wide = withBlends(set, [tint]);
  const search = searchOn(wide);
  const others = ids.filter((id) => id !== strong);
  const tubes = [...others.map((id) => tubeIndex(wide, id)), wide.ids.length - 1];
  const start = [
    ...others.map((id) => (id === light ? grams[light]! - grams[strong]! * parts : grams[id]!)),
    grams[strong]! * (1 + parts),
  ];
  const all = Object.values(grams).reduce((a, b) => a + b, 0);
  const { steps } = descendInSteps(
    {
      search,
      goal: differenceGoal(wanted.channels, wanted.emphasis),
      tubes,
      effectiveStep: tubes.map((t) => step * wide.strength[t]!),
      least,
      total: [Math.floor((0.95 * all) / step), Math.ceil((1.1 * all) / step)],
    },
    start.map((g) => Math.round(g / step)),
  );
  const amounts = Object.fromEntries(tubes.map((t, j) => [wide.ids[t]!, steps[j]! * step]));
  const prediction = predictMix(set.palette, unblended(amounts, [tint]), set.white);
  // Sought in whole steps it may come to nothing: then it is no help.
  if (!(amounts[tint.id]! > 0)) return undefined;
  const split = splitDifference(wanted.lab, prediction.lab);
  const { [tint.id]: pour = 0, ...masses } = amounts;
  return {
    strong,
    light,
    parts,
    make: { [strong]: strongGrams * enough, [light]: strongGrams * enough * parts },
    pour,
    masses: Object.fromEntries(Object.entries(masses).filter(([, g]) => g > 0)),
    deltaE00: split.deltaE00,
    split,
    prediction,
  };
}
