import { GRID_SIZE } from '../../colour/grid.ts';
import { choleskyInPlace, forwardInPlace, logDeterminant } from '../linear/cholesky.ts';
import { emptyArrow } from '../model/arrow.ts';
import { evaluateAt, halfSquare, lineariseAt } from '../model/linearise.ts';
import { addPriors } from '../model/priors.ts';
import type { FitProblem } from '../model/problem.ts';
import { groupWeight } from '../model/weights.ts';

/** The weight of a group whose cost is not asked for. */
const NOTHING: Float64Array = new Float64Array(0);
/** Independent differences of a spectrum: what its roughness scales. */
const ROUGH_RANK = GRID_SIZE - 1;

/**
 * Minus ln probability of a block's readings as a function of the sizes of misfit, haze and roughness (type II maximum
 * likelihood; D. J. C. MacKay, "Bayesian Interpolation", Neural Computation 4 (1992) 415-447):
 *   least cost + (ln det C + ln det H - ln det P)/2,
 * C the covariance of the readings, H the curvature and P that of the priors. The slopes are those where the block
 * stands, which is close by; the step that a size would ask for is taken to first order: it lowers the cost by
 * g^T H^-1 g / 2.
 */
export function blockEvidence(
  problem: FitProblem,
  x: Float64Array,
  b: number,
): (sd: number, haze: number, roughness?: Float64Array) => number {
  const { layout } = problem;
  const { offset, size, tubes } = layout.blocks[b]!;
  const groups = new Set(problem.groups.flatMap((g, k) => (layout.blockOfPile[g.pile] === b ? [k] : [])));
  const none = problem.groups.map(() => NOTHING);
  const { state, groups: predicted } = evaluateAt(problem, none, x, groups, b);
  const room = emptyArrow(layout, b);
  return (sd, haze, roughness = problem.roughness) => {
    const under = { ...problem, roughness };
    const weights = [...none];
    let logDet = 0;
    let cost = addPriors(under, x, null, b);
    for (const k of groups) {
      const at = predicted[k]!;
      const weight = groupWeight(problem, problem.groups[k]!, at, sd, haze);
      weights[k] = weight.W;
      logDet += weight.logDet;
      cost += halfSquare(weight.W, at.residual);
    }
    const { system } = lineariseAt(under, weights, x, groups, b, { state, groups: predicted, cost }, room);
    const L = system.bb[b]!;
    if (!choleskyInPlace(L, size)) return Infinity;
    const step = system.gradient.slice(offset, offset + size);
    forwardInPlace(L, size, step, 1);
    const fall = step.reduce((sum, v) => sum + v * v, 0) / 2;
    const prior = tubes.reduce((sum, t) => sum + ROUGH_RANK * Math.log(roughness[t]!), 0);
    return cost - fall + (logDet + logDeterminant(L, size)) / 2 + prior;
  };
}

/** The ln size where evidence and prior are least: a parabola through the best of the sizes tried. */
export function lowest(
  logs: readonly number[],
  curve: readonly number[],
  centre: number,
  spread: number,
): number {
  const total = curve.map((v, i) => v + ((logs[i]! - centre) / spread) ** 2 / 2);
  const i = Math.min(Math.max(total.indexOf(Math.min(...total)), 1), total.length - 2);
  const [a, m, c] = [total[i - 1]!, total[i]!, total[i + 1]!];
  const bend = a - 2 * m + c;
  if (!Number.isFinite(bend)) return logs[total.indexOf(Math.min(...total))]!;
  const step = logs[i + 1]! - logs[i]!;
  const shift = bend > 0 ? (0.5 * (a - c)) / bend : 0;
  return logs[i]! + step * Math.max(-1, Math.min(1, shift));
}
