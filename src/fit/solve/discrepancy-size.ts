import { choleskyInPlace, forwardInPlace, logDeterminant } from '../linear/cholesky.ts';
import { emptyArrow } from '../model/arrow.ts';
import { evaluateAt, halfSquare, lineariseAt } from '../model/linearise.ts';
import { addPriors } from '../model/priors.ts';
import type { FitProblem } from '../model/problem.ts';
import { type DiscrepancySds, groupWeight } from '../model/weights.ts';

/** Sizes tried, standard deviation in ln(K/S): from under any reading noise to a paint the equations do not fit. */
const TRIED = [0.0025, 0.005, 0.01, 0.02, 0.04, 0.08, 0.16, 0.32];
/** Haze tried, reflectance factor. */
const HAZE_TRIED = [0, 0.001, 0.002];
const TWENTY_TO_ONE = Math.log(20);
/** The weight of a group whose cost is not asked for. */
const NOTHING: Float64Array = new Float64Array(0);
/** Before any evidence: about 1.5 %, within a factor e or so; then about what the other tubes of the set showed. */
const TYPICAL = 0.015;
const SPREAD = 1;

/**
 * Sizes what the equations miss, tube by tube, by the readings' own probability (type II maximum likelihood; D. J. C.
 * MacKay, "Bayesian Interpolation", Neural Computation 4 (1992) 415-447):
 *   least cost + (ln det C + ln det H)/2
 * is what the readings have against a size, C the covariance of the readings and H the curvature. The tubes of one set
 * inform each other: a tube with too few rungs to tell takes what is usual for the set.
 */
export function discrepancySizes(
  problem: FitProblem,
  x: Float64Array,
  before: DiscrepancySds,
  hazeAsked = false,
): DiscrepancySds {
  const against = problem.layout.blocks.map((_, b) => blockEvidence(problem, x, b));
  const haze = problem.settings.hazeSd ?? (hazeAsked ? hazeSize(against, before) : before.haze);
  const curves = against.map((f) => TRIED.map((sd) => f(sd, haze)));
  let centre = Math.log(TYPICAL);
  let logs: number[] = [];
  for (let pass = 0; pass < 3; pass++) {
    logs = curves.map((curve) => lowest(curve, centre));
    const informed = logs.filter((_, b) => problem.layout.blocks[b]!.tubes.length > 0);
    // The typical size is itself doubted: it weighs as one more tube.
    const sum = informed.reduce((a, v) => a + v, Math.log(TYPICAL));
    centre = sum / (informed.length + 1);
  }
  // A mixture of tubes drawn from the set misses by the mean of their variances.
  const tubes = logs.filter((_, b) => problem.layout.blocks[b]!.tubes.length > 0);
  const square = tubes.reduce((a, v) => a + Math.exp(2 * v), Math.exp(2 * centre)) / (tubes.length + 1);
  return {
    blocks: Float64Array.from(logs, Math.exp),
    white: Math.exp(centre),
    typical: Math.sqrt(square),
    haze,
  };
}

/**
 * Minus ln probability of a block's readings as a function of the sizes of misfit and haze. The slopes are those where
 * the block stands, which is close by; the step that a size would ask for is taken to first order: it lowers the cost by
 * g^T H^-1 g / 2.
 */
function blockEvidence(
  problem: FitProblem,
  x: Float64Array,
  b: number,
): (sd: number, haze: number) => number {
  const { layout } = problem;
  const { offset, size } = layout.blocks[b]!;
  const groups = new Set(problem.groups.flatMap((g, k) => (layout.blockOfPile[g.pile] === b ? [k] : [])));
  const none = problem.groups.map(() => NOTHING);
  const { state, groups: predicted } = evaluateAt(problem, none, x, groups, b);
  const room = emptyArrow(layout, b);
  const priors = addPriors(problem, x, null, b);
  return (sd, haze) => {
    const weights = [...none];
    let logDet = 0;
    let cost = priors;
    for (const k of groups) {
      const at = predicted[k]!;
      const weight = groupWeight(problem, problem.groups[k]!, at, sd, haze);
      weights[k] = weight.W;
      logDet += weight.logDet;
      cost += halfSquare(weight.W, at.residual);
    }
    const { system } = lineariseAt(problem, weights, x, groups, b, { state, groups: predicted, cost }, room);
    const L = system.bb[b]!;
    if (!choleskyInPlace(L, size)) return Infinity;
    const step = system.gradient.slice(offset, offset + size);
    forwardInPlace(L, size, step, 1);
    const fall = step.reduce((sum, v) => sum + v * v, 0) / 2;
    return cost - fall + (logDet + logDeterminant(L, size)) / 2;
  };
}

/** The ln size where evidence and prior are least: a parabola through the best of the sizes tried. */
function lowest(curve: readonly number[], centre: number): number {
  const logs = TRIED.map(Math.log);
  const total = curve.map((v, i) => v + ((logs[i]! - centre) / SPREAD) ** 2 / 2);
  const i = Math.min(Math.max(total.indexOf(Math.min(...total)), 1), total.length - 2);
  const [a, m, c] = [total[i - 1]!, total[i]!, total[i + 1]!];
  const bend = a - 2 * m + c;
  if (!Number.isFinite(bend)) return logs[total.indexOf(Math.min(...total))]!;
  const step = logs[i + 1]! - logs[i]!;
  const shift = bend > 0 ? (0.5 * (a - c)) / bend : 0;
  return logs[i]! + step * Math.max(-1, Math.min(1, shift));
}

/**
 * Haze from film to film that the readings of all blocks have least against, the rest of the misfit held: none, unless
 * the readings are twenty to one against none.
 */
function hazeSize(against: readonly ((sd: number, haze: number) => number)[], sds: DiscrepancySds): number {
  const totals = HAZE_TRIED.map((haze) => against.reduce((sum, f, b) => sum + f(sds.blocks[b]!, haze), 0));
  const least = Math.min(...totals);
  return totals[0]! - least < TWENTY_TO_ONE ? 0 : HAZE_TRIED[totals.indexOf(least)]!;
}
