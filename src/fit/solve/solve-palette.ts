import {
  type ArrowFactors,
  type ArrowSystem,
  arrowDiagonal,
  emptyArrow,
  factorArrow,
  roomForFactors,
  solveArrow,
} from '../model/arrow.ts';
import { type Evaluation, evaluateAt, lineariseAt } from '../model/linearise.ts';
import type { FitProblem } from '../model/problem.ts';
import { startOf } from '../model/start.ts';
import { type DiscrepancySds, groupWeights, sameDiscrepancy } from '../model/weights.ts';
import { discrepancySizes } from './discrepancy-size.ts';
import { roomForBlock, settleBlock } from './fit-block.ts';
import { roughnessSizes } from './roughness-size.ts';
import {
  SOLVER_MESSAGES,
  type SolverOptions,
  type SolverReport,
  levenbergMarquardt,
} from './levenberg-marquardt.ts';

export interface Solution {
  /** The problem as solved: with each tube's roughness as found. */
  readonly problem: FitProblem;
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

/** Memory of a step, used again by the next. */
interface Room {
  readonly system: ArrowSystem;
  readonly factors: ArrowFactors;
  at?: Evaluation;
}

function roomFor({ layout }: FitProblem): Room {
  return { system: emptyArrow(layout), factors: roomForFactors(layout) };
}

export function minimise(
  problem: FitProblem,
  weights: readonly Float64Array[],
  start: Float64Array,
  options: SolverOptions = {},
  room: Room = roomFor(problem),
): SolverReport {
  // A step that is taken is linearised where its cost was just asked for.
  let last: Float64Array | undefined;
  const evaluate = (x: Float64Array): Evaluation => {
    room.at = evaluateAt(problem, weights, x, undefined, undefined, room.at);
    last = x;
    return room.at;
  };
  return levenbergMarquardt(
    {
      cost: (x) => evaluate(x).cost,
      linearise: (x) => {
        const known = last === x ? room.at! : evaluate(x);
        const { cost, system } = lineariseAt(problem, weights, x, undefined, undefined, known, room.system);
        return {
          cost,
          gradient: system.gradient,
          diagonal: arrowDiagonal(system),
          solve: (right, extra) => {
            const factors = factorArrow(system, extra, room.factors);
            return factors && solveArrow(problem.layout, factors, right);
          },
        };
      },
    },
    start,
    { maxStep: MAX_STEP, ...options },
  );
}

/** Steps of a block in one round. */
const BLOCK_STEPS = 4;
const MAX_ROUNDS = 40;

/**
 * Minimises from `start` by rounds: each tube's block settles with the white and the surface held, damped as it needs,
 * and then all move together. A tube that is hard to settle (a lake in a thin film) so holds up no other.
 */
export function minimiseByRounds(
  problem: FitProblem,
  weights: readonly Float64Array[],
  start: Float64Array,
  ftol: number,
): SolverReport {
  const { blocks, blockOfPile } = problem.layout;
  const groups = blocks.map(
    (_, b) => new Set(problem.groups.flatMap((g, k) => (blockOfPile[g.pile] === b ? [k] : []))),
  );
  const damping = blocks.map(() => 1e-3);
  const rooms = blocks.map((_, b) => roomForBlock(problem, b));
  const room = roomFor(problem);
  let x = start;
  // The blocks have settled, so that a step of all together needs hardly any damping.
  let together = 1e-6;
  let before = 0;
  let iterations = 0;
  for (let round = 1; ; round++) {
    blocks.forEach((_, b) => {
      const options = { ftol: ftol / 10, maxIterations: BLOCK_STEPS, damping: damping[b]! };
      const settled = settleBlock(problem, weights, x, b, groups[b]!, options, rooms[b]);
      x = settled.x;
      damping[b] = Math.min(1, Math.max(1e-9, settled.report.damping));
    });
    const report = minimise(problem, weights, x, { maxIterations: 1, damping: together, hasty: true }, room);
    together = Math.min(1, Math.max(1e-9, report.damping));
    iterations += report.iterations;
    x = report.x;
    if (round > 1 && before - report.cost <= ftol * report.cost) {
      return { ...report, status: 2, success: true, message: SOLVER_MESSAGES[2], iterations };
    }
    if (round === MAX_ROUNDS) {
      return { ...report, status: 0, success: false, message: SOLVER_MESSAGES[0], iterations };
    }
    before = report.cost;
  }
}

/** A wide error to begin with, so that no rung with a large slope rules the way there. */
const WIDE = 0.1;

/**
 * Fits one problem: weights from the current slopes, then the constants, a few times over; between, what the equations
 * miss is sized from the readings unless `discrepancySd` gives it.
 */
export function solvePalette(asked: FitProblem, discrepancySd?: number): Solution {
  let problem = asked;
  // Three channels cannot bear out a rough ln K: they would fit it at random. It goes into the doubt, not into the constants.
  const fewChannels = asked.set.instrument.kind === 'tristimulus';
  let x = startOf(problem);
  let iterations = 0;
  let sds = sameDiscrepancy(problem, discrepancySd ?? WIDE);
  let weights = groupWeights(problem, x, sameDiscrepancy(problem, Math.max(WIDE, discrepancySd ?? 0)));
  const run = (ftol: number): SolverReport => {
    const report = minimiseByRounds(problem, weights, x, ftol);
    iterations += report.iterations;
    x = report.x;
    return report;
  };
  run(1e-2);
  for (let pass = 0; pass < PASSES; pass++) {
    if (discrepancySd === undefined) {
      sds = discrepancySizes(problem, x, sds, pass > 0);
      if (!fewChannels && pass === 0) problem = { ...problem, roughness: roughnessSizes(problem, x, sds) };
    }
    weights = groupWeights(problem, x, sds);
    run(3e-3);
  }
  weights = groupWeights(problem, x, sds);
  const report = run(1e-5);
  let { system } = lineariseAt(problem, weights, x);
  const optimality = system.gradient.reduce((most, g) => Math.max(most, Math.abs(g)), 0);
  if (fewChannels && discrepancySd === undefined) {
    const found = roughnessSizes(problem, x, sds);
    const doubted = { ...problem, roughness: found.map((times) => Math.max(1, times)) };
    ({ system } = lineariseAt(doubted, weights, x));
  }
  return { problem, report: { ...report, optimality }, x, system, weights, discrepancy: sds, iterations };
}
