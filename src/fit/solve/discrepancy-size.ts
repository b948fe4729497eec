import { fitBlock } from '../evidence/leave-out.ts';
import { choleskyInPlace, logDeterminant } from '../linear/cholesky.ts';
import { stateAt } from '../model/forward.ts';
import { lineariseAt, predictGroup } from '../model/linearise.ts';
import type { FitProblem } from '../model/problem.ts';
import { type DiscrepancySds, groupWeight } from '../model/weights.ts';

/** Sizes tried, standard deviation in ln(K/S): from under any reading noise to a paint the equations do not fit. */
const TRIED = [0.0025, 0.005, 0.01, 0.02, 0.04, 0.08, 0.16, 0.32];
/** Haze tried, reflectance factor. */
const HAZE_TRIED = [0, 0.001, 0.002];
/** Steps a block is given to settle under another size: it starts close by. */
const FEW = 2;
/** Before any evidence: about 1.5 %, within a factor e or so; then about what the other tubes of the set showed. */
const TYPICAL = 0.015;
const SPREAD = 1;

/**
 * Sizes what the equations miss, tube by tube, by the readings' own probability (type II maximum likelihood; D. J. C.
 * MacKay, "Bayesian Interpolation", Neural Computation 4 (1992) 415-447): for each size the block is fitted again and
 *   cost + (ln det C + ln det H)/2
 * is what the readings have against it, C the covariance of the readings and H the curvature. The tubes of one set
 * inform each other: a tube with too few rungs to tell takes what is usual for the set.
 */
export function discrepancySizes(
  problem: FitProblem,
  x: Float64Array,
  before: DiscrepancySds,
  hazeKnown = false,
): DiscrepancySds {
  const haze = problem.settings.hazeSd ?? (hazeKnown ? before.haze : hazeSize(problem, x, before));
  const curves = problem.layout.blocks.map((_, b) => evidenceCurve(problem, x, b, haze));
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
 * Minus ln probability at the sizes tried, walked downhill from the typical size; sizes that were not needed are
 * infinite.
 */
function evidenceCurve(problem: FitProblem, x: Float64Array, b: number, haze: number): number[] {
  const curve = TRIED.map(() => Infinity);
  const at = (i: number): number => {
    if (curve[i] === Infinity) curve[i] = blockEvidence(problem, x, b, TRIED[i]!, haze).against;
    return curve[i]!;
  };
  let i = 3;
  for (;;) {
    const here = at(i);
    if (i + 1 < TRIED.length && at(i + 1) < here) i++;
    else if (i > 0 && at(i - 1) < here) i--;
    else return curve;
  }
}

/** Haze from film to film that the readings of all blocks have least against, the rest of the misfit held. */
function hazeSize(problem: FitProblem, x: Float64Array, sds: DiscrepancySds): number {
  const totals = HAZE_TRIED.map((haze) =>
    problem.layout.blocks.reduce(
      (sum, _, b) => sum + blockEvidence(problem, x, b, sds.blocks[b]!, haze, 1).against,
      0,
    ),
  );
  return HAZE_TRIED[totals.indexOf(Math.min(...totals))]!;
}

/** Minus ln probability of a block's readings for one size of misfit, and the block fitted under it. */
function blockEvidence(
  problem: FitProblem,
  from: Float64Array,
  b: number,
  sd: number,
  haze: number,
  steps = FEW,
): { against: number; x: Float64Array } {
  const { layout } = problem;
  const { size } = layout.blocks[b]!;
  const groups = new Set(problem.groups.flatMap((g, k) => (layout.blockOfPile[g.pile] === b ? [k] : [])));
  const weights = problem.groups.map(() => new Float64Array(0));
  const weigh = (x: Float64Array): number => {
    const state = stateAt(problem, x);
    let logDet = 0;
    for (const k of groups) {
      const group = problem.groups[k]!;
      const weight = groupWeight(problem, group, predictGroup(problem, state, group), sd, haze);
      weights[k] = Float64Array.from(weight.W);
      logDet += weight.logDet;
    }
    return logDet;
  };
  weigh(from);
  const x = fitBlock(problem, weights, from, b, groups, steps);
  const logDet = weigh(x);
  const { cost, system } = lineariseAt(problem, weights, x, groups, b);
  const L = Float64Array.from(system.bb[b]!);
  const curvature = choleskyInPlace(L, size) ? logDeterminant(L, size) : Infinity;
  return { against: cost + (logDet + curvature) / 2, x };
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
