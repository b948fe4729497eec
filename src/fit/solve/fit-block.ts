import { backwardInPlace, choleskyInPlace, forwardInPlace } from '../linear/cholesky.ts';
import { type ArrowSystem, emptyArrow } from '../model/arrow.ts';
import { type Evaluation, evaluateAt, lineariseAt } from '../model/linearise.ts';
import type { FitProblem } from '../model/problem.ts';
import { type SolverOptions, type SolverReport, levenbergMarquardt } from './levenberg-marquardt.ts';

/** Fits one block to some groups from where it stands, all else held. */
export function fitBlock(
  problem: FitProblem,
  weights: readonly Float64Array[],
  from: Float64Array,
  b: number,
  groups: ReadonlySet<number>,
  options: SolverOptions = {},
): Float64Array {
  return settleBlock(problem, weights, from, b, groups, options).x;
}

/** Memory of a block's steps, used again by the next. */
export interface BlockRoom {
  readonly system: ArrowSystem;
  readonly L: Float64Array;
  at?: Evaluation;
}

export function roomForBlock({ layout }: FitProblem, b: number): BlockRoom {
  return { system: emptyArrow(layout, b), L: new Float64Array(layout.blocks[b]!.size ** 2) };
}

/** The same, with the solver's report on the block. `room` is that of the same block and groups. */
export function settleBlock(
  problem: FitProblem,
  weights: readonly Float64Array[],
  from: Float64Array,
  b: number,
  groups: ReadonlySet<number>,
  options: SolverOptions = {},
  room: BlockRoom = roomForBlock(problem, b),
): { x: Float64Array; report: SolverReport } {
  const { offset, size } = problem.layout.blocks[b]!;
  const { L } = room;
  const whole = from.slice();
  const at = (part: Float64Array): Float64Array => {
    whole.set(part, offset);
    return whole;
  };
  let last: Float64Array | undefined;
  const evaluate = (part: Float64Array): Evaluation => {
    room.at = evaluateAt(problem, weights, at(part), groups, b, room.at);
    last = part;
    return room.at;
  };
  const report = levenbergMarquardt(
    {
      cost: (part) => evaluate(part).cost,
      linearise: (part) => {
        const known = last === part ? room.at! : evaluate(part);
        const { cost, system } = lineariseAt(problem, weights, whole, groups, b, known, room.system);
        const H = system.bb[b]!;
        return {
          cost,
          gradient: system.gradient.slice(offset, offset + size),
          diagonal: Float64Array.from({ length: size }, (_, i) => H[i * size + i]!),
          solve: (right, extra) => {
            L.set(H);
            for (let i = 0; i < size; i++) L[i * size + i]! += extra[i]!;
            if (!choleskyInPlace(L, size)) return null;
            const h = right.slice();
            forwardInPlace(L, size, h, 1);
            backwardInPlace(L, size, h, 1);
            return h;
          },
        };
      },
    },
    from.slice(offset, offset + size),
    { ftol: 1e-4, maxIterations: 15, maxStep: 2, hasty: true, ...options },
  );
  return { x: at(report.x), report };
}
