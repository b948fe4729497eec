import { CHANNELS, type MixKernel } from '../kernel.ts';
import type { DescentProblem } from './descent.ts';
import type { Goal } from './goal.ts';

/** Own copy: some loaders turn an imported name into a property look-up, which a loop this tight would feel. */
const FOUR = CHANNELS;

/**
 * A goal in colour as a problem in amounts of the kernel's chosen tubes: the chain rule, and nothing else.
 * `aim` changes the goal between searches without making a new problem.
 */
export interface ColourProblem extends DescentProblem {
  /** Sets the goal and how many tubes are chosen. */
  aim(goal: Goal, m: number): void;
}

export function colourProblem(kernel: MixKernel, most: number): ColourProblem {
  const g = new Float64Array(FOUR);
  const H = new Float64Array(FOUR * FOUR);
  const HJ = new Float64Array(FOUR * most);
  const { u, J } = kernel;
  let goal: Goal = { cost: () => 0, model: () => 0 };
  let m = 0;
  /** The chain rule, from the kernel's slopes. */
  const chain = (slope: Float64Array, A: Float64Array): number => {
    const cost = goal.model(u, g, H);
    for (let c = 0; c < FOUR; c++) {
      for (let j = 0; j < m; j++) {
        let s = 0;
        for (let d = 0; d < FOUR; d++) s += H[c * FOUR + d]! * J[d * m + j]!;
        HJ[c * m + j] = s;
      }
    }
    for (let j = 0; j < m; j++) {
      let s = 0;
      for (let c = 0; c < FOUR; c++) s += J[c * m + j]! * g[c]!;
      slope[j] = s;
      for (let k = 0; k <= j; k++) {
        let a = 0;
        for (let c = 0; c < FOUR; c++) a += J[c * m + j]! * HJ[c * m + k]!;
        A[j * m + k] = A[k * m + j] = a;
      }
    }
    return cost;
  };
  return {
    aim(next, count) {
      goal = next;
      m = count;
    },
    cost(x) {
      kernel.colourForSlopes(x);
      return goal.cost(u);
    },
    model(x, slope, A) {
      kernel.colourAndSlopes(x);
      return chain(slope, A);
    },
    again(slope, A) {
      kernel.slopes();
      return chain(slope, A);
    },
  };
}
