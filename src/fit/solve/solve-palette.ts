import { arrowDiagonal, type ArrowSystem, factorArrow, solveArrow } from '../model/arrow.ts';
import { costAt, lineariseAt } from '../model/linearise.ts';
import type { FitProblem } from '../model/problem.ts';
import { startOf } from '../model/start.ts';
import { groupWeights } from '../model/weights.ts';
import { type SolverOptions, type SolverReport, levenbergMarquardt } from './levenberg-marquardt.ts';

export interface Solution {
  readonly report: SolverReport;
  readonly x: Float64Array;
  readonly system: ArrowSystem;
  readonly weights: readonly Float64Array[];
  readonly logDet: number;
  readonly iterations: number;
}

/** ln K, ln S and the rest move at most this far in one step. */
const MAX_STEP = 2;
/** How often the weights are taken anew: they depend on the slopes, which depend on the constants. */
const PASSES = 3;

export function minimise(
  problem: FitProblem,
  weights: readonly Float64Array[],
  start: Float64Array,
  options: SolverOptions = {},
): SolverReport {
  return levenbergMarquardt(
    {
      cost: (x) => costAt(problem, weights, x),
      linearise: (x) => {
        const { cost, system } = lineariseAt(problem, weights, x);
        return {
          cost,
          gradient: system.gradient,
          diagonal: arrowDiagonal(system),
          solve: (right, extra) => {
            const factors = factorArrow(system, extra);
            return factors && solveArrow(problem.layout, factors, right);
          },
        };
      },
    },
    start,
    { maxStep: MAX_STEP, ...options },
  );
}

/** Fits one problem: weights from the current slopes, then the constants, a few times over. */
export function solvePalette(
  problem: FitProblem,
  discrepancySd: number,
  from?: Float64Array,
  passes: number = PASSES,
): Solution {
  let x = from ? Float64Array.from(from) : startOf(problem);
  let iterations = 0;
  let report: SolverReport | undefined;
  if (!from) {
    // A wide error at first, so that no rung with a large slope rules the way there.
    const wide = groupWeights(problem, x, Math.max(discrepancySd, 0.1)).weights;
    const first = minimise(problem, wide, x, { ftol: 1e-3, maxIterations: 60 });
    iterations += first.iterations;
    x = first.x;
  }
  let current = groupWeights(problem, x, discrepancySd);
  for (let pass = 0; pass < passes; pass++) {
    const last = pass === passes - 1;
    report = minimise(problem, current.weights, x, last ? { ftol: 1e-8 } : { ftol: 1e-4 });
    iterations += report.iterations;
    x = report.x;
    if (!last) current = groupWeights(problem, x, discrepancySd);
  }
  const { system } = lineariseAt(problem, current.weights, x);
  return { report: report!, x, system, ...current, iterations };
}
