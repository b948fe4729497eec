import type { FitProblem } from '../model/problem.ts';
import { fitBlock } from '../solve/fit-block.ts';
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
