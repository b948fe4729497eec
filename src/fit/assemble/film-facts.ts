import { GRID_SIZE } from '../../colour/grid.ts';
import { forwardInPlace } from '../linear/cholesky.ts';
import { factorArrow } from '../model/arrow.ts';
import { stateAt } from '../model/forward.ts';
import type { FitProblem } from '../model/problem.ts';
import type { DrawdownFit, SurfaceSds } from '../palette-fit.ts';
import type { Solution } from '../solve/solve-palette.ts';

/**
 * Standard deviation of one unknown: the root of its place in the inverse curvature, |L^-1 e|^2 with L the factors of
 * the block and of the border below it.
 */
function sdOf({ layout }: FitProblem, solution: Solution): (place: number) => number {
  const factors = factorArrow(solution.system)!;
  const n = layout.border;
  return (place) => {
    const w = new Float64Array(n);
    let variance = 0;
    if (place < n) w[place] = 1;
    else {
      const b = layout.blocks.findIndex((k) => place >= k.offset && place < k.offset + k.size);
      const { offset, size } = layout.blocks[b]!;
      const z = new Float64Array(size);
      z[place - offset] = 1;
      forwardInPlace(factors.L[b]!, size, z, 1);
      const Y = factors.Y[b]!;
      for (let k = 0; k < size; k++) {
        variance += z[k]! ** 2;
        for (let i = 0; i < n; i++) w[i]! -= Y[k * n + i]! * z[k]!;
      }
    }
    forwardInPlace(factors.border, n, w, 1);
    return Math.sqrt(w.reduce((sum, v) => sum + v * v, variance));
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
