/**
 * The frame of a solution: the surface as estimated, and how its constants and the white's crowding are doubtful together
 * with the white. With P the precision of the border (w the white, t the frame's unknowns, others as they stand),
 *   Cov(t) = (P_tt - P_tw P_ww^-1 P_wt)^-1,   w follows t by -P_ww^-1 P_wt
 * (marginal and conditional of a normal distribution, any textbook), so that the white's own columns stay what they are for
 * a frame that is known.
 */
import { backwardInPlace, choleskyInPlace, forwardInPlace } from '../linear/cholesky.ts';
import type { ArrowFactors } from '../model/arrow.ts';
import type { ModelState } from '../model/forward.ts';
import type { FitProblem } from '../model/problem.ts';
import type { FrameDoubt } from '../frame-doubt.ts';
import type { Surface } from '../optics/surface.ts';

export function surfaceOfState({ surface }: FitProblem, state: ModelState): Surface {
  if (surface.form === '45/0') {
    return { ...surface, k2: state.k2, haze: state.floor, escape: state.top * (1 - state.k2) };
  }
  const k1 = 1 - state.top;
  const haze = surface.form === 'specular-included' ? state.floor - k1 : state.floor;
  return { ...surface, k1, k2: state.k2, haze };
}

export interface FrameOfSolution {
  /** Columns on the whole border: what white and frame do together, one standard normal number each. */
  readonly columns: readonly Float64Array[];
  /** What the frame does, column by column, with as many zeros before as the white has columns of its own. */
  readonly doubt: FrameDoubt | undefined;
}

/** @param before columns of the white's own that stand before these. */
export function frameOfSolution(
  { layout, surface }: FitProblem,
  factors: ArrowFactors,
  state: ModelState,
  whiteSize: number,
  before: number,
): FrameOfSolution {
  const { k2, floor, crowding } = layout.shared;
  const places = [k2, floor, crowding].filter((p) => p !== undefined);
  if (places.length === 0) return { columns: [], doubt: undefined };
  const n = layout.border;
  const precision = (i: number, j: number): number => {
    let v = 0;
    const end = Math.min(i, j);
    for (let k = 0; k <= end; k++) v += factors.border[i * n + k]! * factors.border[j * n + k]!;
    return v;
  };
  const Pww = new Float64Array(whiteSize * whiteSize);
  for (let i = 0; i < whiteSize; i++) for (let j = 0; j <= i; j++) Pww[i * whiteSize + j] = precision(i, j);
  choleskyInPlace(Pww, whiteSize);
  const r = places.length;
  // Z = L^-1 P_wt, so that P_tw P_ww^-1 P_wt = Z^T Z.
  const Z = new Float64Array(whiteSize * r);
  for (let i = 0; i < whiteSize; i++) places.forEach((p, a) => (Z[i * r + a] = precision(p, i)));
  forwardInPlace(Pww, whiteSize, Z, r);
  const M = new Float64Array(r * r);
  for (let a = 0; a < r; a++) {
    for (let b = 0; b <= a; b++) {
      let v = precision(places[a]!, places[b]!);
      for (let i = 0; i < whiteSize; i++) v -= Z[i * r + a]! * Z[i * r + b]!;
      M[a * r + b] = v;
    }
  }
  choleskyInPlace(M, r);
  const columns = places.map((_, a) => {
    const t = new Float64Array(r);
    t[a] = 1;
    backwardInPlace(M, r, t, 1);
    const w = new Float64Array(whiteSize);
    for (let i = 0; i < whiteSize; i++) for (let b = 0; b < r; b++) w[i]! -= Z[i * r + b]! * t[b]!;
    backwardInPlace(Pww, whiteSize, w, 1);
    const column = new Float64Array(n);
    column.set(w);
    places.forEach((p, b) => (column[p] = t[b]!));
    return column;
  });
  const along = (of: (column: Float64Array) => number): Float64Array =>
    Float64Array.from({ length: before + r }, (_, j) => (j < before ? 0 : of(columns[j - before]!)));
  const at = (place: number | undefined) => (column: Float64Array) =>
    place === undefined ? 0 : column[place]!;
  const k1Slope = surface.form === '45/0' ? 0 : -state.topSlope;
  const escapeSlope = surface.form === '45/0' ? state.topSlope * (1 - state.k2) - state.top : 0;
  const hazeSlope = surface.form === 'specular-included' ? -k1Slope : 0;
  const byK2 = at(k2);
  return {
    columns,
    doubt: {
      ...(k1Slope ? { k1: along((c) => k1Slope * byK2(c)) } : {}),
      ...(k2 === undefined ? {} : { k2: along(byK2) }),
      ...(escapeSlope && k2 !== undefined ? { escape: along((c) => escapeSlope * byK2(c)) } : {}),
      ...(floor === undefined && !hazeSlope
        ? {}
        : { haze: along((c) => at(floor)(c) + hazeSlope * byK2(c)) }),
      ...(crowding === undefined ? {} : { crowding: along(at(crowding)) }),
    },
  };
}
