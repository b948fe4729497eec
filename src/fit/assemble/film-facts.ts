import { GRID_SIZE } from '../../colour/grid.ts';
import { factorArrow, solveArrow } from '../model/arrow.ts';
import { stateAt } from '../model/forward.ts';
import type { FitProblem } from '../model/problem.ts';
import type { DrawdownFit, SurfaceSds } from '../palette-fit.ts';
import type { Solution } from '../solve/solve-palette.ts';

/** Standard deviation of one unknown: the root of its place in the inverse curvature. */
function sdOf(problem: FitProblem, solution: Solution): (place: number) => number {
  const factors = factorArrow(solution.system)!;
  return (place) => {
    const right = new Float64Array(problem.layout.size);
    right[place] = 1;
    return Math.sqrt(solveArrow(problem.layout, factors, right)[place]!);
  };
}

/** Thickness of each film, and how sure the shared unknowns are. */
export function filmsAndSurface(
  problem: FitProblem,
  solution: Solution,
): {
  drawdowns: DrawdownFit[];
  surfaceSds: SurfaceSds;
  crowdingSd: number | undefined;
  whiteScatteringPerMicrometre: { value: number; relativeSigma: number } | undefined;
} {
  const { layout, white } = problem;
  const sd = sdOf(problem, solution);
  const { S } = stateAt(problem, solution.x);
  let unit = 0;
  for (let i = 0; i < GRID_SIZE; i++) unit += S[white * GRID_SIZE + i]! / GRID_SIZE;
  const { k2, floor, crowding, lnXPerMicrometre: perUm } = layout.shared;
  return {
    drawdowns: problem.films.map((film, f) => ({
      id: film.id,
      X: Math.exp(solution.x[layout.films[f]!]!) * unit,
      sdLnX: sd(layout.films[f]!),
      micrometres: film.thickness,
    })),
    surfaceSds: {
      ...(k2 === undefined ? {} : { k2: sd(k2) }),
      ...(floor === undefined ? {} : { haze: sd(floor) }),
    },
    crowdingSd: crowding === undefined ? undefined : sd(crowding),
    whiteScatteringPerMicrometre:
      perUm === undefined
        ? undefined
        : { value: Math.exp(solution.x[perUm]!) * unit, relativeSigma: sd(perUm) },
  };
}
