/**
 * Additions a scale can weigh: amounts sought in whole steps with the wanted colour in view, the pile as it lies. Rounding
 * exact additions would not do: what a pile lacks is little, and a strong tube rounds to none or to too much.
 */
import type { Scale } from '../pour/scale.ts';
import { scaleSteps } from '../pour/scale.ts';
import { descendInSteps, intoRange, roundedSteps, roundedTo } from '../pour/whole-steps.ts';
import type { Goal } from '../search/goal.ts';
import type { AdditionProblem, RoughAddition } from './each-addition.ts';

/** How much more paint than the exact addition a weighed one may take, as a share: as for recipes. */
const MORE = 0.1;
/** Steps tried at once: a pile may lie thousands of them away. */
const MOVES = [1, -1, 2, -2, 5, -5, 25, -25, 125, -125];

/**
 * Rough additions in whole steps of a scale. `near`: each with about the paint it takes, and none farther from the goal
 * than it is simply rounded. `far`: with up to a pile more. What comes to nothing is left out.
 */
export function weighedAdditions(
  problem: AdditionProblem,
  roughs: Readonly<Record<'near' | 'far', readonly Pick<RoughAddition, 'tubes' | 'grams' | 'total'>[]>>,
  goal: Goal,
  scale: Scale,
  maxGrams: number,
): RoughAddition[] {
  const { step, least } = scaleSteps(scale);
  const { search, pile, pileGrams } = problem;
  const { strength } = search.set;
  const most = Math.floor(maxGrams / step + 1e-9);
  const seen = new Set<string>();
  return (['near', 'far'] as const).flatMap((how) =>
    roughs[how].flatMap(({ tubes, grams, total }): RoughAddition[] => {
      const rounded = roundedSteps(
        grams.map((g) => g / step),
        least,
      );
      const start = rounded.some((k) => k > 0) ? rounded : rounded.map((_, j) => (j === 0 ? least : 0));
      const sum = start.reduce((a, b) => a + b, 0);
      const about = Math.max(sum, Math.ceil((total * (1 + MORE)) / step));
      const high = Math.min(most, how === 'near' ? about : about + Math.ceil(pileGrams / step));
      const key = JSON.stringify([tubes, start, high]);
      if (high < least || seen.has(key)) return [];
      seen.add(key);
      const range = [least, high] as const;
      const { steps, cost } = descendInSteps(
        {
          search,
          goal,
          tubes,
          effectiveStep: tubes.map((t) => step * strength[t]!),
          least,
          total: range,
          moves: MOVES,
          pile: { tube: pile, parts: pileGrams * strength[pile]! },
        },
        intoRange(start, range),
      );
      return cost === Infinity ? [] : [weighedOut(problem, tubes, steps, step)];
    }),
  );
}

/**
 * An addition with tubes beside it, none of them yet: a strong tube poured at the smallest is too much for the pile unless
 * the pile grows with it. `beside`: tubes that may stand there, the likeliest first; as many as may be added at once.
 */
export function withTubesBeside(
  { tubes, grams, total }: RoughAddition,
  beside: readonly number[],
  most: number,
): Pick<RoughAddition, 'tubes' | 'grams' | 'total'>[] {
  const others = beside.filter((t) => !tubes.includes(t)).slice(0, Math.max(0, most - tubes.length));
  return others.map((_, n) => ({
    tubes: [...tubes, ...others.slice(0, n + 1)],
    grams: [...grams, ...others.slice(0, n + 1).map(() => 0)],
    total,
  }));
}

function weighedOut(
  { search, pile, pileGrams }: AdditionProblem,
  tubes: readonly number[],
  steps: readonly number[],
  step: number,
): RoughAddition {
  const used = tubes.map((_, j) => j).filter((j) => steps[j]! > 0);
  const chosen = used.map((j) => tubes[j]!);
  const grams = used.map((j) => roundedTo(steps[j]! * step, step));
  const { strength } = search.set;
  search.kernel.choose([...chosen, pile]);
  search.kernel.colour(
    Float64Array.of(...chosen.map((t, j) => grams[j]! * strength[t]!), pileGrams * strength[pile]!),
  );
  return {
    tubes: chosen,
    grams,
    total: roundedTo(
      grams.reduce((a, b) => a + b, 0),
      step,
    ),
    u: Float64Array.from(search.kernel.u),
  };
}
