import type { Search } from '../search/come-down.ts';
import { type Watch, heed } from '../problem.ts';
import type { Goal } from '../search/goal.ts';
import { choices } from '../search/net.ts';
import { pricedProblem } from './priced-problem.ts';

/** Something that could be added to the pile: `grams[j]` of tubes[j], for the pile as it is. */
export interface RoughAddition {
  /** Indices of the tubes added. */
  readonly tubes: readonly number[];
  readonly grams: readonly number[];
  /** Grams in all. */
  readonly total: number;
  /** The corrected pile's four channels. */
  readonly u: Float64Array;
}

/** What is added to, and with what. */
export interface AdditionProblem {
  /** A search over a set with the pile as one of its tubes. */
  readonly search: Search;
  /** Index of the pile, and its grams. */
  readonly pile: number;
  readonly pileGrams: number;
  /** Tubes that may be added, and how many at once. */
  readonly tubes: readonly number[];
  readonly most: number;
}

/** Prices of a pile's worth of paint, in the goal's units: from hardly anything added to "only the colour counts". */
const PRICES = [200, 40, 10, 2, 0.2, 0.02, 0];
/** Where a search begins: what is added, in effective parts to one of the pile. */
const START = 0.05;

/** One addition brought down to a goal at a price of paint, from amounts x (the pile first). Changes x. */
export function bringDown(
  problem: AdditionProblem,
  tubes: readonly number[],
  goal: Goal,
  x: Float64Array,
  price: number,
): RoughAddition | undefined {
  const { search, pile } = problem;
  const chosen = [pile, ...tubes];
  const gramsPer = chosen.map((t) => 1 / search.set.strength[t]!);
  search.kernel.choose(chosen);
  search.problem.aim(goal, chosen.length);
  const priced = pricedProblem(search.problem, chosen.length, gramsPer, price);
  search.descent.solve(priced, x, chosen.length, { maxIterations: 25 });
  if (!(x[0]! > 0)) return undefined;
  search.kernel.colour(x);
  const scale = problem.pileGrams / (x[0]! * gramsPer[0]!);
  const grams = tubes.map((_, j) => x[j + 1]! * gramsPer[j + 1]! * scale);
  const kept = tubes.map((_, j) => j).filter((j) => grams[j]! > 1e-6 * problem.pileGrams);
  return {
    tubes: kept.map((j) => tubes[j]!),
    grams: kept.map((j) => grams[j]!),
    total: kept.reduce((sum, j) => sum + grams[j]!, 0),
    u: Float64Array.from(search.kernel.u),
  };
}

/** Amounts of an addition as the descent takes them, the pile first. */
export function amountsOf(problem: AdditionProblem, addition: RoughAddition): Float64Array {
  const { strength } = problem.search.set;
  return Float64Array.of(
    problem.pileGrams * strength[problem.pile]!,
    ...addition.tubes.map((t, j) => addition.grams[j]! * strength[t]!),
  );
}

/**
 * Every family of tubes that may be added, each brought down to the goal at falling prices of paint, so that small
 * additions are found before large ones. @throws MixingStopped
 */
export function eachAddition(problem: AdditionProblem, goal: Goal, watch?: Watch): RoughAddition[] {
  const n = problem.tubes.length;
  const families = Array.from({ length: Math.min(problem.most, n) }, (_, k) => choices(n, k + 1)).flat();
  return families.flatMap((family, i) => {
    if (i % 16 === 0) heed(watch, i, families.length);
    const tubes = family.map((k) => problem.tubes[k]!);
    const x = Float64Array.from({ length: tubes.length + 1 }, (_, j) => (j === 0 ? 1 : START / tubes.length));
    const found: RoughAddition[] = [];
    for (const price of PRICES) {
      const addition = bringDown(problem, tubes, goal, x, price);
      if (!addition) break;
      if (addition.tubes.length > 0) found.push(addition);
    }
    return found;
  });
}
