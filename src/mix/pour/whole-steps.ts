import type { Search } from '../search/come-down.ts';
import type { Goal } from '../search/goal.ts';

/** Amounts in whole steps of the scale (or whole parts), near a given mix and as close to a goal as steps allow. */
export interface StepProblem {
  readonly search: Search;
  readonly goal: Goal;
  /** Indices of the tubes. */
  readonly tubes: readonly number[];
  /** Effective parts of one step of each tube. */
  readonly effectiveStep: readonly number[];
  /** Fewest steps of each tube that is used at all. */
  readonly least: number;
  /** Fewest and most steps in all. */
  readonly total: readonly [number, number];
  /** Steps tried at once. @default 1, 2 and 5 either way */
  readonly moves?: readonly number[];
  /** What lies there already and is not touched: a pile, in effective parts. */
  readonly pile?: { readonly tube: number; readonly parts: number };
}

export interface StepResult {
  readonly steps: readonly number[];
  readonly cost: number;
}

/** Single moves, and exchanges between two tubes, tried in turn. */
const MOVES = [1, -1, 2, -2, 5, -5];

/**
 * Improves whole steps by single moves and exchanges until none helps. A tube is at nothing or at `least` and above;
 * a move across that gap jumps it.
 */
export function descendInSteps(problem: StepProblem, start: readonly number[]): StepResult {
  const { search, goal, tubes, effectiveStep, least, total, pile, moves = MOVES } = problem;
  const x = new Float64Array(tubes.length + (pile ? 1 : 0));
  if (pile) x[tubes.length] = pile.parts;
  search.kernel.choose(pile ? [...tubes, pile.tube] : tubes);
  const costOf = (steps: readonly number[]): number => {
    let sum = 0;
    for (let j = 0; j < steps.length; j++) {
      const k = steps[j]!;
      if (k > 0 && k < least) return Infinity;
      x[j] = k * effectiveStep[j]!;
      sum += k;
    }
    if (sum < total[0] || sum > total[1]) return Infinity;
    search.kernel.colour(x);
    return goal.cost(search.kernel.u);
  };
  const moved = (k: number, by: number): number => {
    const to = k + by;
    if (to >= least) return to;
    return by < 0 ? 0 : least;
  };
  let steps = [...start];
  let cost = costOf(steps);
  for (;;) {
    let best = steps;
    let bestCost = cost;
    const consider = (next: readonly number[]): void => {
      const c = costOf(next);
      if (c < bestCost - 1e-12) {
        best = [...next];
        bestCost = c;
      }
    };
    for (let j = 0; j < tubes.length; j++) {
      for (const by of moves) {
        const one = steps.with(j, moved(steps[j]!, by));
        consider(one);
        for (let i = 0; i < tubes.length; i++) {
          if (i !== j) consider(one.with(i, Math.max(0, one[i]! - (one[j]! - steps[j]!))));
        }
      }
    }
    if (bestCost >= cost) return { steps, cost };
    steps = best;
    cost = bestCost;
  }
}

/** Brings steps within the allowed total by changing the largest amount. */
export function intoRange(steps: readonly number[], [low, high]: readonly [number, number]): number[] {
  const sum = steps.reduce((a, b) => a + b, 0);
  const largest = steps.indexOf(Math.max(...steps));
  const by = sum < low ? low - sum : sum > high ? high - sum : 0;
  return steps.map((k, j) => (j === largest ? Math.max(0, k + by) : k));
}

/** A multiple of the scale's step without the tail of binary fractions, grams. */
export function roundedTo(grams: number, step: number): number {
  const digits = Math.max(0, Math.ceil(-Math.log10(step)) + 2);
  return Number((Math.round(grams / step) * step).toFixed(digits));
}

/** Nearest allowed steps to wanted amounts (in steps, not whole). */
export function roundedSteps(wanted: readonly number[], least: number): number[] {
  return wanted.map((w) => (w >= least ? Math.round(w) : w >= least / 2 ? least : 0));
}
