import { type Blend, unblended, withBlends } from '../blend.ts';
import { labelOf } from '../../fit/palette.ts';
import type { Masses } from '../film-stack.ts';
import { searchOn } from '../search/come-down.ts';
import { type ColourSplit, VALUE_KEPT, splitDifference } from '../match/difference.ts';
import type { WantedColour } from '../match/wanted.ts';
import { type MixPrediction, predictMix } from '../predict-mix.ts';
import { differenceGoal } from '../search/goal.ts';
import { say } from '../sentences.ts';
import { type TubeSet, tubeIndex } from '../tube-set.ts';
import { type PourStep, orderOfAddition } from './order.ts';
import { type Scale, scaleSteps } from './scale.ts';
import { descendInSteps, intoRange, roundedSteps, roundedTo } from './whole-steps.ts';

/** One strong tube let down first, so that the tint of it can be weighed. */
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
}

/** A recipe made with pre-tints: each strong tube that falls under the smallest pour and is better let down first. */
export interface PreTintPlan {
  /** Least of the strong tube first. */
  readonly tints: readonly PreTint[];
  /** The recipe with them: grams of the other tubes. */
  readonly masses: Masses;
  /** Those in the order they are put down; the pre-tints come last. */
  readonly order: readonly PourStep[];
  /** CIEDE2000 from the wanted colour of the recipe made that way, and how it differs. */
  readonly deltaE00: number;
  readonly split: ColourSplit;
  readonly prediction: MixPrediction;
}

/** Ratios worth making, in parts of the light tube to one of the strong. */
const RATIOS = [4, 9, 19, 49, 99];
/** A pre-tint is an errand: each must bring the mix nearer by this, CIEDE2000. Our choice. */
const WORTH_AN_ERRAND = 0.25;
/** About the least difference seen edge to edge, CIEDE2000. Common practice, no source. */
const SEEN = 1;
/** With more tubes than this under the smallest pour, they are let down one alone or all together. */
const MOST_TOGETHER = 4;

/** How far off a mix is: CIEDE2000, and where value is held what is missed of it, ten of L* to one of value. */
function missed(wanted: WantedColour, split: ColourSplit): number {
  const held = wanted.emphasis.lightness > 1 || wanted.emphasis.value > 0;
  return split.deltaE00 + (held ? 10 * Math.max(0, Math.abs(split.value) - VALUE_KEPT) : 0);
}

/**
 * For an exact recipe (`grams`) whose pour is off by `poured.split`: which of the tubes under the smallest pour to let
 * down first, each at the least dilution at which its tint can be weighed, so that the mix comes nearest for the
 * fewest errands. What is left out of the pour and no pre-tint helps gets a sentence.
 */
export function preTintPlan(
  set: TubeSet,
  wanted: WantedColour,
  grams: Masses,
  scale: Scale,
  poured: { readonly split: ColourSplit; readonly leftOut: readonly string[] },
): { readonly plan?: PreTintPlan; readonly whyNot: readonly string[] } {
  const { smallestPour } = scaleSteps(scale);
  const ids = Object.keys(grams);
  const light = ids.reduce((a, b) => (grams[b]! > grams[a]! ? b : a));
  const weak = ids
    .filter((id) => id !== light && grams[id]! < smallestPour)
    .toSorted((a, b) => grams[a]! - grams[b]! || (a < b ? -1 : 1));
  if (weak.length === 0) return { whyNot: [] };
  const plans = choicesOf(weak).flatMap((strong) => letDown(set, wanted, grams, scale, strong, light) ?? []);
  const cost = (plan: PreTintPlan): number =>
    missed(wanted, plan.split) + WORTH_AN_ERRAND * plan.tints.length;
  const best = plans.reduce<PreTintPlan | undefined>((a, b) => (a && cost(a) <= cost(b) ? a : b), undefined);
  const plan = best && cost(best) < missed(wanted, poured.split) ? best : undefined;
  const seen = plan
    ? (id: string) => plan.tints.some((t) => t.strong === id) || id in plan.masses
    : () => false;
  const alone = (id: string): PreTintPlan | undefined =>
    plans.find((p) => p.tints.length === 1 && p.tints[0]!.strong === id);
  const lightName = labelOf(set.palette, light);
  const whyNot = poured.leftOut
    .filter((id) => !seen(id))
    .map((id) => {
      const tube = labelOf(set.palette, id);
      const own = alone(id);
      const now = missed(wanted, (plan ?? poured).split);
      if (!own && now > WORTH_AN_ERRAND) return say('pre-tint-none', { tube, light: lightName });
      const gain = own ? Math.max(0, now - missed(wanted, own.split)) : now;
      return gain.toFixed(2) === '0.00'
        ? say('pre-tint-same', { tube })
        : say('pre-tint-not-worth', { tube, gain: gain.toFixed(2) });
    });
  const overdone =
    plan || missed(wanted, poured.split) < SEEN
      ? []
      : weak
          .filter((id) => !poured.leftOut.includes(id) && !alone(id))
          .map((id) => say('pre-tint-overdone', { tube: labelOf(set.palette, id), light: lightName }));
  return { ...(plan ? { plan } : {}), whyNot: [...whyNot, ...overdone] };
}

/** Every choice of the tubes, singles first; with many of them, one alone or all together. */
function choicesOf(weak: readonly string[]): string[][] {
  if (weak.length > MOST_TOGETHER) return [...weak.map((id) => [id]), [...weak]];
  return Array.from({ length: 2 ** weak.length - 1 }, (_, i) =>
    weak.filter((__, j) => ((i + 1) >> j) % 2 === 1),
  ).toSorted((a, b) => a.length - b.length);
}

/** Least dilution at which each tint can be weighed; undefined where the light tube does not last for all. */
function dilutions(
  grams: Masses,
  strong: readonly string[],
  light: string,
  smallestPour: number,
): number[] | undefined {
  const parts = strong.map((id) => RATIOS.find((r) => grams[id]! * (1 + r) >= smallestPour));
  const taken = strong.reduce((sum, id, j) => sum + grams[id]! * (parts[j] ?? Infinity), 0);
  return taken <= grams[light]! ? parts.map((r) => r!) : undefined;
}

function letDown(
  set: TubeSet,
  wanted: WantedColour,
  grams: Masses,
  scale: Scale,
  strong: readonly string[],
  light: string,
): PreTintPlan | undefined {
  const { step, least, smallestPour } = scaleSteps(scale);
  const parts = dilutions(grams, strong, light, smallestPour);
  if (!parts) return undefined;
  const tints = strong.map((id, j): Blend => ({
    id: `pre-tint of ${id}`,
    masses: { [id]: 1, [light]: parts[j]! },
  }));
  const wide = withBlends(set, tints);
  const others = Object.keys(grams).filter((id) => !strong.includes(id));
  const tubes = [...others.map((id) => tubeIndex(wide, id)), ...tints.map((_, j) => set.ids.length + j)];
  const taken = strong.reduce((sum, id, j) => sum + grams[id]! * parts[j]!, 0);
  const start = [
    ...others.map((id) => (id === light ? grams[light]! - taken : grams[id]!)),
    ...strong.map((id, j) => grams[id]! * (1 + parts[j]!)),
  ];
  const all = Object.values(grams).reduce((a, b) => a + b, 0);
  const total = [Math.floor((0.95 * all) / step), Math.ceil((1.1 * all) / step)] as const;
  const { steps, cost } = descendInSteps(
    {
      search: searchOn(wide),
      goal: differenceGoal(wanted.channels, wanted.emphasis),
      tubes,
      effectiveStep: tubes.map((t) => step * wide.strength[t]!),
      least,
      total,
    },
    intoRange(
      roundedSteps(
        start.map((g) => g / step),
        least,
      ),
      total,
    ),
  );
  const poured = strong.map((_, j) => roundedTo(steps[others.length + j]! * step, step));
  // Sought in whole steps a tint may come to nothing: then this is the plan of fewer tints.
  if (cost === Infinity || poured.some((g) => g === 0)) return undefined;
  const masses = Object.fromEntries(
    others.flatMap((id, j) => (steps[j]! > 0 ? [[id, roundedTo(steps[j]! * step, step)]] : [])),
  );
  const amounts = { ...masses, ...Object.fromEntries(tints.map((tint, j) => [tint.id, poured[j]!])) };
  const prediction = predictMix(set.palette, unblended(amounts, tints), set.white);
  const split = splitDifference(wanted.lab, prediction.lab);
  return {
    tints: strong.map((id, j): PreTint => {
      const weighed = least * step;
      const enough = Math.max(1, Math.ceil(poured[j]! / (weighed * (1 + parts[j]!)) - 1e-9));
      const make = {
        [id]: roundedTo(weighed * enough, step),
        [light]: roundedTo(weighed * enough * parts[j]!, step),
      };
      return { strong: id, light, parts: parts[j]!, make, pour: poured[j]! };
    }),
    masses,
    order: orderOfAddition(set, masses),
    deltaE00: split.deltaE00,
    split,
    prediction,
  };
}
