import { arrowDiagonal, type ArrowSystem, factorArrow, solveArrow } from '../model/arrow.ts';
import { costAt, lineariseAt } from '../model/linearise.ts';
import type { FitProblem } from '../model/problem.ts';
import { startOf } from '../model/start.ts';
import { type DiscrepancySds, groupWeights, sameDiscrepancy } from '../model/weights.ts';
import { discrepancySizes } from './discrepancy-size.ts';
import { type SolverOptions, type SolverReport, levenbergMarquardt } from './levenberg-marquardt.ts';

export interface Solution {
  readonly report: SolverReport;
  readonly x: Float64Array;
  readonly system: ArrowSystem;
  readonly weights: readonly Float64Array[];
  readonly discrepancy: DiscrepancySds;
  readonly iterations: number;
}

/** ln K, ln S and the rest move at most this far in one step. */
const MAX_STEP = 2;
/** How often the weights are taken anew: they depend on the slopes, which depend on the constants. */
const PASSES = 2;

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

/** A wide error to begin with, so that no rung with a large slope rules the way there. */
const WIDE = 0.1;

/**
 * Fits one problem: weights from the current slopes, then the constants, a few times over; between, what the equations
 * miss is sized from the readings unless `discrepancySd` gives it.
 */
export function solvePalette(problem: FitProblem, discrepancySd?: number): Solution {
  let x = startOf(problem);
  let iterations = 0;
  let sds = sameDiscrepancy(problem, discrepancySd ?? WIDE);
  let weights = groupWeights(problem, x, sameDiscrepancy(problem, Math.max(WIDE, discrepancySd ?? 0)));
  const run = (options: SolverOptions): SolverReport => {
    const report = minimise(problem, weights, x, options);
    iterations += report.iterations;
    x = report.x;
    return report;
  };
  run({ ftol: 1e-2, maxIterations: 60, damping: 1e-1 });
  for (let pass = 0; pass < PASSES; pass++) {
    if (discrepancySd === undefined) sds = discrepancySizes(problem, x, sds, pass > 0);
    weights = groupWeights(problem, x, sds);
    run({ ftol: 3e-3 });
  }
  weights = groupWeights(problem, x, sds);
  const report = run({ ftol: 1e-5 });
  const { system } = lineariseAt(problem, weights, x);
  return { report, x, system, weights, discrepancy: sds, iterations };
}
