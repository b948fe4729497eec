/**
 * Crowding of the white inside a search (src/fit/mixture.ts): a gram of white at a share c of a mix scatters
 * 1 + f (1 - c) times as much as in its masstone, f the palette's crowding. A mix's scattering is then the plain sum
 * over its tubes plus that of E more grams of white,
 *   E = f W (1 - W/M),   dE/dm_j = f (w_j (1 - 2 W/M) + (W/M)^2),
 * with M the mass of the mix, W = sum w_j m_j that of the white in it, and w_j the white in a gram of tube or blend j.
 * K, and everything else a search rests on, stays as it was; E is of degree 1, so that only ratios still count.
 */
import { GRID_SIZE } from '../colour/grid.ts';

export interface Crowding {
  /** The palette's crowding; never 0 here. */
  readonly factor: number;
  /** The white's scattering per unit of mass, on the grid. */
  readonly whiteS: Float64Array;
  /** Grams of white in a gram of each tube or blend of the set: 1, 0 or between. */
  readonly whiteShare: Float64Array;
}

/** What the sums need of a set. */
interface CrowdedSet {
  readonly strength: Float64Array;
  readonly crowding?: Crowding;
}

/** Grams of white that crowding adds to the scattering of effective parts x of tubes of a set. */
export function extraWhite(set: CrowdedSet, tubes: ArrayLike<number>, x: ArrayLike<number>): number {
  const { crowding, strength } = set;
  if (!crowding) return 0;
  let M = 0;
  let W = 0;
  for (let j = 0; j < tubes.length; j++) {
    const m = x[j]! / strength[tubes[j]!]!;
    M += m;
    W += m * crowding.whiteShare[tubes[j]!]!;
  }
  return M > 0 ? crowding.factor * W * (1 - W / M) : 0;
}

/** dE/dx_j of each effective part, into `out`. */
export function extraWhiteSlopes(
  set: CrowdedSet,
  tubes: ArrayLike<number>,
  x: ArrayLike<number>,
  out: Float64Array,
): void {
  const { crowding, strength } = set;
  if (!crowding) {
    out.fill(0, 0, tubes.length);
    return;
  }
  let M = 0;
  let W = 0;
  for (let j = 0; j < tubes.length; j++) {
    const m = x[j]! / strength[tubes[j]!]!;
    M += m;
    W += m * crowding.whiteShare[tubes[j]!]!;
  }
  const c = M > 0 ? W / M : 0;
  for (let j = 0; j < tubes.length; j++) {
    const w = crowding.whiteShare[tubes[j]!]!;
    out[j] = (crowding.factor * (w * (1 - 2 * c) + c * c)) / strength[tubes[j]!]!;
  }
}

/** K and S of effective parts x of tubes of a set at grid sample i, crowding and all. */
export function sumsAt(
  set: CrowdedSet & { readonly K: Float64Array; readonly S: Float64Array },
  tubes: ArrayLike<number>,
  x: ArrayLike<number>,
  i: number,
  extra: number,
): { K: number; S: number } {
  let K = 0;
  let S = set.crowding ? extra * set.crowding.whiteS[i]! : 0;
  for (let j = 0; j < tubes.length; j++) {
    K += x[j]! * set.K[tubes[j]! * GRID_SIZE + i]!;
    S += x[j]! * set.S[tubes[j]! * GRID_SIZE + i]!;
  }
  return { K, S };
}
