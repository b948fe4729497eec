import { type MixKernel, mixKernel } from '../kernel.ts';
import type { TubeSet } from '../tube-set.ts';
import { type ColourProblem, colourProblem } from './colour-problem.ts';
import { type Descent, descent } from './descent.ts';
import type { Goal } from './goal.ts';

/** A mix a search came down to. */
export interface Candidate {
  /** Indices into the set, ascending. */
  readonly tubes: readonly number[];
  /** Effective parts, summing to 1, none of them 0. */
  readonly parts: Float64Array;
  /** Cost of the goal: squared CIEDE2000 where nothing is held. */
  readonly cost: number;
}

/** Cost under which a colour counts as reached: CIEDE2000 0.001. */
export const EXACT = 1e-6;

export interface Search {
  readonly set: TubeSet;
  readonly kernel: MixKernel;
  readonly problem: ColourProblem;
  readonly descent: Descent;
}

/** Scratch for searches over one set. */
export function searchOn(set: TubeSet): Search {
  const kernel = mixKernel(set);
  const most = Math.max(4, set.ids.length);
  return { set, kernel, problem: colourProblem(kernel, most), descent: descent(most) };
}

/** Drops the tubes that a descent left at nothing. */
function withoutZeros(tubes: readonly number[], x: Float64Array, cost: number): Candidate {
  if (x.every((part) => part > 1e-9)) return { tubes, parts: x, cost };
  const kept = tubes.map((tube, j) => ({ tube, part: x[j]! })).filter(({ part }) => part > 1e-9);
  return { tubes: kept.map((k) => k.tube), parts: Float64Array.from(kept, (k) => k.part), cost };
}

/** Brings a family down to a goal from a start; undefined where an interior search met its edge. */
export function comeDown(
  search: Search,
  goal: Goal,
  tubes: readonly number[],
  start: Float64Array,
  interior: boolean,
): Candidate | undefined {
  const x = start.slice();
  search.kernel.choose(tubes);
  search.problem.aim(goal, tubes.length);
  const cost = search.descent.solve(search.problem, x, tubes.length, { interior, reached: EXACT / 100 });
  return cost === Infinity ? undefined : withoutZeros(tubes, x, cost);
}
