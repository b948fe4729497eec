import { accumulate } from './accumulate.ts';
import { type ArrowSystem, emptyArrow } from './arrow.ts';
import { columnsOf } from './columns.ts';
import { type ModelState, stateAt } from './forward.ts';
import { readingsOnGrid, weightsOnGrid } from './on-grid.ts';
import { freePassing } from './passing-spectra.ts';
import { type GroupPrediction, predictGroup } from './predict-group.ts';
import { addPriors } from './priors.ts';
import type { FitProblem } from './problem.ts';

/** A group's prediction, and its residuals times their weights. */
export interface WeighedPrediction extends GroupPrediction {
  readonly weighed: Float64Array;
}

/** The predictions at one point and what they cost, so that the slopes there need no second prediction. */
export interface Evaluation {
  readonly state: ModelState;
  /** One per group; undefined for groups left out. */
  readonly groups: readonly (WeighedPrediction | undefined)[];
  /** Half the weighted sum of squares with the priors. */
  readonly cost: number;
}

/**
 * Predicts at one point; weights are one matrix per group, `only` some groups, `block` the priors of one block alone
 * (whose groups `only` are). `room` is an evaluation of the same groups that is done with.
 */
export function evaluateAt(
  problem: FitProblem,
  weights: readonly Float64Array[],
  x: Float64Array,
  only?: ReadonlySet<number>,
  block?: number,
  room?: Evaluation,
): Evaluation {
  const state = stateAt(problem, x, block, room?.state);
  let cost = addPriors(problem, x, null, block);
  const groups: (WeighedPrediction | undefined)[] = [];
  for (let g = 0; g < problem.groups.length; g++) {
    if (only && !only.has(g)) {
      groups.push(undefined);
      continue;
    }
    const before = room?.groups[g];
    const at = predictGroup(problem, state, problem.groups[g]!, before);
    const weighed = before?.weighed ?? new Float64Array(at.residual.length);
    cost += weigh(weights[g]!, at.residual, weighed);
    const { mixture, slopes, predicted, residual, reported } = at;
    groups.push({ mixture, slopes, predicted, residual, reported, weighed });
  }
  return { state, groups, cost };
}

/** W r into `out`; returns half of r^T W r. */
function weigh(W: Float64Array, r: Float64Array, out: Float64Array): number {
  const n = r.length;
  let sum = 0;
  let i = 0;
  for (; i + 3 < n; i += 4) {
    const a = i * n;
    const b = a + n;
    const c = b + n;
    const d = c + n;
    let va = 0;
    let vb = 0;
    let vc = 0;
    let vd = 0;
    for (let j = 0; j < n; j++) {
      const v = r[j]!;
      va += W[a + j]! * v;
      vb += W[b + j]! * v;
      vc += W[c + j]! * v;
      vd += W[d + j]! * v;
    }
    out[i] = va;
    out[i + 1] = vb;
    out[i + 2] = vc;
    out[i + 3] = vd;
    sum += va * r[i]! + vb * r[i + 1]! + vc * r[i + 2]! + vd * r[i + 3]!;
  }
  for (; i < n; i++) {
    let v = 0;
    for (let j = 0; j < n; j++) v += W[i * n + j]! * r[j]!;
    out[i] = v;
    sum += v * r[i]!;
  }
  return sum / 2;
}

/** Half the weighted sum of squares with the priors, at one point; as `evaluateAt`. */
export function costAt(
  problem: FitProblem,
  weights: readonly Float64Array[],
  x: Float64Array,
  only?: ReadonlySet<number>,
  block?: number,
): number {
  return evaluateAt(problem, weights, x, only, block).cost;
}

/** Half the weighted sum of squares of some groups' residuals, without any prior. */
export function readingsCost(
  problem: FitProblem,
  weights: readonly Float64Array[],
  x: Float64Array,
  only: ReadonlySet<number>,
): number {
  let cost = 0;
  for (const g of only) {
    const group = problem.groups[g]!;
    const b = problem.layout.blockOfPile[group.pile]!;
    const { residual } = predictGroup(problem, stateAt(problem, x, b < 0 ? undefined : b), group);
    cost += weigh(weights[g]!, residual, new Float64Array(residual.length));
  }
  return cost;
}

/**
 * Cost, gradient and Gauss-Newton normal equations at one point; of `only` some groups, and for the unknowns of one
 * `block` alone (the border's are left at zero), where they are given. `known` is what `evaluateAt` said of this point,
 * `room` a system that is done with.
 */
export function lineariseAt(
  problem: FitProblem,
  weights: readonly Float64Array[],
  x: Float64Array,
  only?: ReadonlySet<number>,
  block?: number,
  known: Evaluation = evaluateAt(problem, weights, x, only, block),
  room?: ArrowSystem,
): { cost: number; system: ArrowSystem } {
  const system = emptyArrow(problem.layout, block, room);
  addPriors(problem, x, system, block);
  const folded = foldsClipping(problem);
  for (let g = 0; g < problem.groups.length; g++) {
    const at = known.groups[g];
    if (!at) continue;
    freePassing();
    const group = problem.groups[g]!;
    accumulate(
      system,
      problem.layout.blockOfPile[group.pile]!,
      columnsOf(problem, known.state, group, at, folded, block),
      weightsOnGrid(problem, weights[g]!, at, folded),
      readingsOnGrid(problem, at.weighed, at, folded),
    );
  }
  return { cost: known.cost, system };
}

/** A channel that is one wavelength takes its clipping into the slopes, and the weights stay as they are. */
export function foldsClipping({ clipped, channelAt }: FitProblem): boolean {
  return clipped && channelAt !== undefined;
}
