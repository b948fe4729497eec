import { lineariseAt, costAt } from '../model/linearise.ts';
import { choleskyInPlace, backwardInPlace, forwardInPlace } from '../linear/cholesky.ts';
import type { FitProblem } from '../model/problem.ts';
import { levenbergMarquardt } from '../solve/levenberg-marquardt.ts';
import type { Solution } from '../solve/solve-palette.ts';

/**
 * The unknowns with the swatches of one pile left out: the tube's own block fitted again, the white and the surface
 * held. Null where the block has nothing else to stand on.
 */
export function withoutGroup(problem: FitProblem, solution: Solution, g: number): Float64Array | null {
  const { layout } = problem;
  const b = layout.blockOfPile[problem.groups[g]!.pile]!;
  if (b < 0) return null;
  const others = new Set(
    problem.groups.flatMap((group, k) => (k !== g && layout.blockOfPile[group.pile] === b ? [k] : [])),
  );
  const tubes = layout.blocks[b]!.tubes;
  const covered = tubes.every((t) => [...others].some((k) => problem.groups[k]!.tubes.includes(t)));
  if (others.size < 2 || !covered) return null;
  return fitBlock(problem, solution.weights, solution.x, b, others);
}

/** Fits one block to some groups from where it stands, all else held. */
export function fitBlock(
  problem: FitProblem,
  weights: readonly Float64Array[],
  from: Float64Array,
  b: number,
  groups: ReadonlySet<number>,
  maxIterations = 15,
): Float64Array {
  const { offset, size } = problem.layout.blocks[b]!;
  const whole = Float64Array.from(from);
  const at = (part: Float64Array): Float64Array => {
    whole.set(part, offset);
    return whole;
  };
  const report = levenbergMarquardt(
    {
      cost: (part) => costAt(problem, weights, at(part), groups, b),
      linearise: (part) => {
        const { cost, system } = lineariseAt(problem, weights, at(part), groups, b);
        const H = system.bb[b]!;
        return {
          cost,
          gradient: system.gradient.slice(offset, offset + size),
          diagonal: Float64Array.from({ length: size }, (_, i) => H[i * size + i]!),
          solve: (right, extra) => {
            const L = Float64Array.from(H);
            for (let i = 0; i < size; i++) L[i * size + i]! += extra[i]!;
            if (!choleskyInPlace(L, size)) return null;
            const h = Float64Array.from(right);
            forwardInPlace(L, size, h, 1);
            backwardInPlace(L, size, h, 1);
            return h;
          },
        };
      },
    },
    from.slice(offset, offset + size),
    { ftol: 1e-4, maxIterations, maxStep: 2 },
  );
  return Float64Array.from(at(report.x));
}
