import { backwardInPlace, choleskyInPlace, forwardInPlace } from '../linear/cholesky.ts';
import { emptyArrow } from '../model/arrow.ts';
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

/** The same, with the solver's report on the block. */
export function settleBlock(
  problem: FitProblem,
  weights: readonly Float64Array[],
  from: Float64Array,
  b: number,
  groups: ReadonlySet<number>,
  options: SolverOptions = {},
): { x: Float64Array; report: SolverReport } {
  const { offset, size } = problem.layout.blocks[b]!;
  const whole = from.slice();
  const at = (part: Float64Array): Float64Array => {
    whole.set(part, offset);
    return whole;
  };
  const room = emptyArrow(problem.layout, b);
  const L = new Float64Array(size * size);
  let last: { part: Float64Array; at: Evaluation } | undefined;
  const report = levenbergMarquardt(
    {
      cost: (part) => {
        last = { part, at: evaluateAt(problem, weights, at(part), groups, b) };
        return last.at.cost;
      },
      linearise: (part) => {
        const known = last?.part === part ? last.at : undefined;
        const { cost, system } = lineariseAt(problem, weights, at(part), groups, b, known, room);
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
