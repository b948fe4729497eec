import { emptyArrow, factorArrow } from '../model/arrow.ts';
import { inverseFromCholesky } from '../linear/cholesky.ts';
import { predictGroup } from '../model/predict-group.ts';
import { stateAt } from '../model/forward.ts';
import { addPriors } from '../model/priors.ts';
import type { FitProblem } from '../model/problem.ts';
import type { Solution } from '../solve/solve-palette.ts';

/**
 * Reduced chi-square per block: the weighted squares of its residuals over its readings less the unknowns that the
 * readings, not the priors, decide: tr(I - H^-1 P).
 */
export function reducedChiSquares(problem: FitProblem, solution: Solution): number[] {
  const { layout } = problem;
  const prior = emptyArrow(layout);
  addPriors(problem, solution.x, prior);
  const factors = factorArrow(solution.system)!;
  const state = stateAt(problem, solution.x);
  const square = new Float64Array(layout.blocks.length);
  const count = new Float64Array(layout.blocks.length);
  problem.groups.forEach((group, g) => {
    const b = layout.blockOfPile[group.pile]!;
    if (b < 0) return;
    const { residual } = predictGroup(problem, state, group);
    const W = solution.weights[g]!;
    const n = residual.length;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) square[b]! += residual[i]! * W[i * n + j]! * residual[j]!;
    }
    count[b]! += n;
  });
  return layout.blocks.map(({ size }, b) => {
    const inverse = inverseFromCholesky(factors.L[b]!, size);
    let free = size;
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) {
        const p = i >= j ? prior.bb[b]![i * size + j]! : prior.bb[b]![j * size + i]!;
        free -= inverse[i * size + j]! * p;
      }
    }
    return square[b]! / Math.max(1, count[b]! - Math.max(0, free));
  });
}
