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

/**
 * The state at a point; of a block's tubes and the white alone, where one is given. `room` is a state that is done with.
 */
export function stateAt(
  problem: FitProblem,
  x: Float64Array,
  block?: number,
  room: Pick<ModelState, 'K' | 'S' | 'e' | 'lnX'> = roomForState(problem),
): ModelState {
  const { layout, surface, white } = problem;
  const { K, S, e, lnX } = room;
  const exponentials = (t: number): void => {
    const k = layout.lnK[t]!;
    const s = layout.lnS[t]!;
    for (let i = 0; i < N; i++) {
      if (k >= 0) K[t * N + i] = Math.exp(x[k + i]!);
      if (s >= 0) S[t * N + i] = Math.exp(x[s + i]!);
    }
  };
  if (block === undefined) for (let t = 0; t < layout.lnK.length; t++) exponentials(t);
  else {
    exponentials(white);
    for (const t of layout.blocks[block]!.tubes) exponentials(t);
  }
  place(layout.errors, x, e);
  place(layout.films, x, lnX);
  const { shared } = layout;
  const of = (at: number | undefined, otherwise: number): number => (at === undefined ? otherwise : x[at]!);
  const k2 = of(shared.k2, surface.k2);
  return {
    K,
    S,
    e,
    k2,
    floor: of(shared.floor, surfaceFloor(surface)),
    ...topAt(problem, k2),
    crowding: of(shared.crowding, 0),
    lnX,
  };
}

/** Half the range of k2 over the indices an oil film may have, 1.4 to 1.6. */
const INDEX_RANGE = 0.065;

/** The top and its slope by k2, which levels off where k2 has left what any index would give: there it is not the index. */
function topAt({ surface, topSlope }: FitProblem, k2: number): Pick<ModelState, 'top' | 'topSlope'> {
  const t = Math.tanh((k2 - surface.k2) / INDEX_RANGE);
  return { top: topOf(surface) + topSlope * INDEX_RANGE * t, topSlope: topSlope * (1 - t * t) };
}

function roomForState({ layout, set }: FitProblem): Pick<ModelState, 'K' | 'S' | 'e' | 'lnX'> {
  const tubes = set.tubes.length;
  return {
    K: new Float64Array(tubes * N),
    S: new Float64Array(tubes * N).fill(1),
    e: new Float64Array(layout.errors.length),
    lnX: new Float64Array(layout.films.length),
  };
}

function place(places: Int32Array, x: Float64Array, into: Float64Array): void {
  for (let i = 0; i < into.length; i++) if (places[i]! >= 0) into[i] = x[places[i]!]!;
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

/** `room` is a mixture that is done with. */
export function mixtureOf(
  problem: FitProblem,
  state: ModelState,
  group: Group,
  room?: PileMixture,
): PileMixture {
  const shares = sharesOfPile(problem.piles, group.pile, state.e);
  const K = room?.K.fill(0) ?? new Float64Array(N);
  const S = room?.S.fill(0) ?? new Float64Array(N);
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

function roomForSlopes(): SwatchSlopes {
  const [measured, dK, dS, dLnX, dK2, dFloor] = Array.from({ length: 6 }, () => new Float64Array(N));
  return { measured: measured!, dK: dK!, dS: dS!, dLnX: dLnX!, dK2: dK2!, dFloor: dFloor! };
}

/** `room` is a prediction that is done with. */
export function predictSwatch(
  state: ModelState,
  mixture: PileMixture,
  film: number,
  card: Float64Array | undefined,
  room: SwatchSlopes = roomForSlopes(),
): SwatchSlopes {
  const { k2, floor, top, topSlope } = state;
  const topShare = topSlope / top;
  const gain = top * (1 - k2);
  const { measured, dK, dS, dLnX, dK2, dFloor } = room;
  const X = film < 0 ? 0 : Math.exp(state.lnX[film]!);
  for (let i = 0; i < N; i++) {
    const K = mixture.K[i]!;
    const S = mixture.S[i]!;
    let R: number;
    let rK: number;
    let rS: number;
    let byLnX = 0;
    let byK2 = 0;
    let byFloor = 1;
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
      byLnX = at.dLnX * slope;
      if (raw >= DARKEST_CARD) {
        const underG = 1 - k2 * Rg;
        const slopeG = gain / (underG * underG);
        const readG = (gain * Rg) / underG;
        byK2 = (slope * at.dRg * ((top * Rg * (1 - Rg)) / (underG * underG) - topShare * readG)) / slopeG;
        byFloor -= (slope * at.dRg) / slopeG;
      }
    }
    const under = 1 - k2 * R;
    const slope = gain / (under * under);
    measured[i] = floor + (gain * R) / under;
    dK[i] = rK * slope;
    dS[i] = rS * slope;
    dLnX[i] = byLnX;
    dK2[i] = byK2 + (topShare * gain * R) / under - (top * R * (1 - R)) / (under * under);
    dFloor[i] = byFloor;
  }
  return room;
}
