import type { WhiteName } from '../../colour/illuminant.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import type { Masses } from '../film-stack.ts';
import { searchOn } from '../search/come-down.ts';
import { splitDifference, type ColourSplit } from '../match/difference.ts';
import { type Priority, type Wanted, wantedColour, whiteOfWanted } from '../match/wanted.ts';
import { type MixPrediction, predictMix } from '../predict-mix.ts';
import { MixProblem } from '../problem.ts';
import { differenceGoal } from '../search/goal.ts';
import { effectiveParts, tubeSet } from '../tube-set.ts';
import { type PourStep, orderOfAddition } from './order.ts';
import { type PreTintPlan, preTintPlan } from './pre-tint.ts';
import { type Scale, canPour, scaleSteps } from './scale.ts';
import { descendInSteps, intoRange, roundedSteps, roundedTo } from './whole-steps.ts';
import { say } from '../sentences.ts';

export interface PourOptions {
  /** Grams of mix wanted, at least. */
  readonly grams: number;
  readonly scale: Scale;
  /** How much more than wanted may come out, as a share. @default 0.1 */
  readonly more?: number;
  readonly priority?: Priority;
  readonly white?: WhiteName;
}

/** A recipe as it can be poured. */
export interface Pour {
  /** Grams by tube id, each a whole number of the scale's steps. Tubes that come to nothing are left out. */
  readonly masses: Masses;
  readonly grams: number;
  readonly prediction: MixPrediction;
  readonly split: ColourSplit;
  readonly deltaE00: number;
  /** The same amount simply rounded to the scale, for comparison; null where rounding leaves nothing. */
  readonly roundedDeltaE00: number | null;
  /** Ids of tubes of the recipe that no pour of this size can hold. */
  readonly leftOut: readonly string[];
  readonly order: readonly PourStep[];
  /** Where strong tubes fall under the smallest pour, and letting them down first brings the mix plainly nearer. */
  readonly preTint?: PreTintPlan;
  /** One sentence for each tube left out that no pre-tint helps. */
  readonly noPreTint: readonly string[];
}

/** Amounts tried between what is wanted and what may come out. */
const AMOUNTS = 12;

/**
 * A recipe in grams that a scale can weigh: the amounts are sought afresh in whole steps of the scale with the wanted
 * colour in view, not rounded. `masses`: the exact recipe, by tube id, any unit.
 * @throws MixProblem for a scale or an amount that cannot be.
 */
export function pourRecipe(
  palette: MixingPalette,
  target: Wanted,
  masses: Masses,
  options: PourOptions,
): Pour {
  const { grams, more = 0.1 } = options;
  const { step, least, smallestPour } = scaleSteps(options.scale);
  if (!canPour(grams, options.scale) || !(more >= 0)) {
    throw new MixProblem(say('too-little', { grams, smallest: smallestPour }));
  }
  const wanted = wantedColour(target, options.priority, options.white);
  const set = tubeSet(palette, { white: whiteOfWanted(target, options.white) });
  const search = searchOn(set);
  const x = effectiveParts(set, masses);
  const tubes = [...x.keys()].filter((i) => x[i]! > 0);
  const exact = tubes.map((t) => x[t]! / set.strength[t]!);
  const sum = exact.reduce((a, b) => a + b, 0);
  const goal = differenceGoal(wanted.channels, wanted.emphasis);
  const total = [
    Math.ceil(grams / step - 1e-9),
    Math.max(Math.ceil(grams / step - 1e-9), Math.floor((grams * (1 + more)) / step + 1e-9)),
  ] as const;
  const problem = {
    search,
    goal,
    tubes,
    effectiveStep: tubes.map((t) => step * set.strength[t]!),
    least,
    total,
  };
  const results = Array.from({ length: AMOUNTS + 1 }, (_, a) => {
    const all = a === 0 ? grams / step : total[0] + ((total[1] - total[0]) * a) / AMOUNTS;
    return descendInSteps(
      problem,
      intoRange(
        roundedSteps(
          exact.map((m) => (m / sum) * all),
          least,
        ),
        total,
      ),
    );
  });
  const best = results.reduce((a, b) => (b.cost < a.cost - 1e-9 ? b : a));
  const poured = Object.fromEntries(
    tubes.flatMap((t, j) =>
      best.steps[j]! > 0 ? [[set.ids[t]!, roundedTo(best.steps[j]! * step, step)]] : [],
    ),
  );
  const prediction = predictMix(palette, poured, set.white);
  const split = splitDifference(wanted.lab, prediction.lab);
  // Rounding as a person would do it: each pour to the scale's step, the largest making up what was wanted.
  const nearest = roundedSteps(
    exact.map((m) => ((m / sum) * grams) / step),
    least,
  );
  const plain = nearest.some((k) => k > 0) ? intoRange(nearest, total) : nearest;
  const rounded = Object.fromEntries(tubes.map((t, j) => [set.ids[t]!, plain[j]! * step]));
  const leftOut = tubes.filter((_, j) => best.steps[j] === 0).map((t) => set.ids[t]!);
  const { plan, whyNot } = preTintPlan(
    set,
    wanted,
    Object.fromEntries(tubes.map((t, j) => [set.ids[t]!, (exact[j]! / sum) * grams])),
    options.scale,
    { split, leftOut },
  );
  return {
    masses: poured,
    grams: roundedTo(
      Object.values(poured).reduce((a, b) => a + b, 0),
      step,
    ),
    prediction,
    split,
    deltaE00: split.deltaE00,
    roundedDeltaE00: plain.some((k) => k > 0)
      ? splitDifference(wanted.lab, predictMix(palette, rounded, set.white).lab).deltaE00
      : null,
    leftOut,
    order: orderOfAddition(set, poured),
    ...(plan ? { preTint: plan } : {}),
    noPreTint: whyNot,
  };
}
