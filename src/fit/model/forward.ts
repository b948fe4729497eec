import { type PileShares, sharesOfPile } from '../../calibrate/swatch-set/piles.ts';
import { GRID_SIZE } from '../../colour/grid.ts';
import { filmReflectance } from '../optics/finite-film.ts';
import { surfaceFloor, topOf } from '../optics/surface.ts';
import type { FitProblem, Group } from './problem.ts';

const N = GRID_SIZE;

/** Constants of all tubes and the surface at one point of the search. */
export interface ModelState {
  /** exp(ln K), exp(ln S), tube by tube, 36 each. */
  readonly K: Float64Array;
  readonly S: Float64Array;
  readonly e: Float64Array;
  readonly k2: number;
  readonly floor: number;
  /** gain/(1-k2): what a perfect white reads above the floor; it moves with k2, for both follow the index. */
  readonly top: number;
  /** d(top)/d(k2); 0 where k2 is held. */
  readonly topSlope: number;
  readonly crowding: number;
  readonly lnX: Float64Array;
}

/** The state at a point; with `only`, of the tubes of some groups alone. */
export function stateAt(problem: FitProblem, x: Float64Array, only?: ReadonlySet<number>): ModelState {
  const { layout, surface } = problem;
  const tubes = problem.set.tubes.length;
  const K = new Float64Array(tubes * N);
  const S = new Float64Array(tubes * N).fill(1);
  const wanted = only && new Set([...only].flatMap((g) => problem.groups[g]!.tubes));
  for (let t = 0; t < tubes; t++) {
    if (wanted && !wanted.has(t)) continue;
    const k = layout.lnK[t]!;
    const s = layout.lnS[t]!;
    for (let i = 0; i < N; i++) {
      if (k >= 0) K[t * N + i] = Math.exp(x[k + i]!);
      if (s >= 0) S[t * N + i] = Math.exp(x[s + i]!);
    }
  }
  const { shared } = layout;
  const of = (place: number | undefined, otherwise: number): number =>
    place === undefined ? otherwise : x[place]!;
  const k2 = of(shared.k2, surface.k2);
  return {
    K,
    S,
    e: placed(layout.errors, x),
    k2,
    floor: of(shared.floor, surfaceFloor(surface)),
    ...topAt(problem, k2),
    crowding: of(shared.crowding, 0),
    lnX: placed(layout.films, x),
  };
}

/** Half the range of k2 over the indices an oil film may have, 1.4 to 1.6. */
const INDEX_RANGE = 0.065;

/** The top and its slope by k2, which levels off where k2 has left what any index would give: there it is not the index. */
function topAt({ surface, topSlope }: FitProblem, k2: number): Pick<ModelState, 'top' | 'topSlope'> {
  const t = Math.tanh((k2 - surface.k2) / INDEX_RANGE);
  return { top: topOf(surface) + topSlope * INDEX_RANGE * t, topSlope: topSlope * (1 - t * t) };
}

function placed(places: Int32Array, x: Float64Array): Float64Array {
  const out = new Float64Array(places.length);
  for (let i = 0; i < out.length; i++) if (places[i]! >= 0) out[i] = x[places[i]!]!;
  return out;
}

/** One swatch predicted on the grid, with its slopes. */
export interface SwatchSlopes {
  readonly measured: Float64Array;
  /** d(measured)/dK and /dS of the mixture. */
  readonly dK: Float64Array;
  readonly dS: Float64Array;
  readonly dLnX: Float64Array;
  readonly dK2: Float64Array;
  readonly dFloor: Float64Array;
}

/** A pile's mixture under a state. */
export interface PileMixture {
  readonly shares: PileShares;
  readonly K: Float64Array;
  readonly S: Float64Array;
}

export function mixtureOf(problem: FitProblem, state: ModelState, group: Group): PileMixture {
  const shares = sharesOfPile(problem.piles, group.pile, state.e);
  const K = new Float64Array(N);
  const S = new Float64Array(N);
  for (const t of group.tubes) {
    const c = shares.shares[t]!;
    const cs = t === problem.white ? c * (1 + state.crowding * (1 - c)) : c;
    const from = t * N;
    for (let i = 0; i < N; i++) {
      K[i]! += c * state.K[from + i]!;
      S[i]! += cs * state.S[from + i]!;
    }
  }
  return { shares, K, S };
}

/** Least internal reflectance a card is taken to have while the search tries a floor above its reading. */
const DARKEST_CARD = 1e-4;

export function predictSwatch(
  state: ModelState,
  mixture: PileMixture,
  film: number,
  card: Float64Array | undefined,
): SwatchSlopes {
  const { k2, floor, top, topSlope } = state;
  const topShare = topSlope / top;
  const gain = top * (1 - k2);
  const measured = new Float64Array(N);
  const dK = new Float64Array(N);
  const dS = new Float64Array(N);
  const dLnX = new Float64Array(N);
  const dK2 = new Float64Array(N);
  const dFloor = new Float64Array(N);
  const X = film < 0 ? 0 : Math.exp(state.lnX[film]!);
  for (let i = 0; i < N; i++) {
    const K = mixture.K[i]!;
    const S = mixture.S[i]!;
    let R: number;
    let rK: number;
    let rS: number;
    if (film < 0) {
      const root = Math.sqrt(K * (K + 2 * S));
      R = S / (K + S + root);
      // dR/dln q = -R(1-R)/(1+R)
      const l = (-R * (1 - R)) / (1 + R);
      rK = l / K;
      rS = -l / S;
    } else {
      const y = card![i]! - floor;
      const raw = y / (gain + k2 * y);
      const Rg = Math.max(raw, DARKEST_CARD);
      const at = filmReflectance(K, S, X, Rg);
      R = at.R;
      rK = at.dK;
      rS = at.dS;
      const under = 1 - k2 * R;
      const slope = gain / (under * under);
      dLnX[i] = at.dLnX * slope;
      if (raw >= DARKEST_CARD) {
        const underG = 1 - k2 * Rg;
        const slopeG = gain / (underG * underG);
        const readG = (gain * Rg) / underG;
        dK2[i] = (slope * at.dRg * ((top * Rg * (1 - Rg)) / (underG * underG) - topShare * readG)) / slopeG;
        dFloor[i] = (-slope * at.dRg) / slopeG;
      }
    }
    const under = 1 - k2 * R;
    const slope = gain / (under * under);
    measured[i] = floor + (gain * R) / under;
    dK[i] = rK * slope;
    dS[i] = rS * slope;
    dK2[i]! += (topShare * gain * R) / under - (top * R * (1 - R)) / (under * under);
    dFloor[i]! += 1;
  }
  return { measured, dK, dS, dLnX, dK2, dFloor };
}
