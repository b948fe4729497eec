/**
 * A palette's doubt as independent standard normal numbers z: those all tubes share, then each tube's own. To first
 * order a prediction moves by G z, and a measurement with slopes G and noise covariance R turns the covariance of z from
 * I into (I + G^T R^-1 G)^-1 (linear-Gaussian update; any text on Kalman filters or Bayesian regression).
 */
import { GRID_SIZE } from '../../colour/grid.ts';
import { discrepancyColumns } from '../discrepancy.ts';
import { frameColumns } from '../frame-doubt.ts';
import { type MixingPalette, tubeOf } from '../palette.ts';
import { predictSlopes } from '../predict.ts';

/** How a mixture's reflectance on the grid answers to what is doubtful about it. Columns of 36. */
export interface DoubtOfMixture {
  readonly measured: Float64Array;
  readonly shared: readonly Float64Array[];
  /** By tube id; tubes that are not in the mixture are absent. */
  readonly own: ReadonlyMap<string, readonly Float64Array[]>;
  /** What the equations miss, afresh for each mixture: nothing measured elsewhere lessens it. */
  readonly afresh: readonly Float64Array[];
  /** d(measured)/d(share) of each tube at constant shares of the rest, by tube id. */
  readonly byShare: ReadonlyMap<string, Float64Array>;
}

/** The slopes of one opaque mixture. @throws RangeError as `sharesOf` does. */
export function doubtOfMixture(
  palette: MixingPalette,
  masses: Readonly<Record<string, number>>,
): DoubtOfMixture {
  const at = predictSlopes(palette, masses);
  const sharedCount = Math.max(0, ...palette.tubes.map((t) => t.shared.length));
  const shared = Array.from({ length: sharedCount }, () => new Float64Array(GRID_SIZE));
  const own = new Map<string, Float64Array[]>();
  const byShare = new Map<string, Float64Array>();
  for (const { id, share, K, S } of at.parts) {
    const tube = tubeOf(palette, id);
    const carry = (column: Float64Array, into = new Float64Array(GRID_SIZE)): Float64Array => {
      for (let i = 0; i < GRID_SIZE; i++) {
        into[i]! += at.dK[i]! * K[i]! * column[i]! + at.dS[i]! * S[i]! * column[GRID_SIZE + i]!;
      }
      return into;
    };
    tube.shared.forEach((column, j) => carry(column, shared[j]));
    own.set(
      id,
      tube.own.map((column) => carry(column)),
    );
    byShare.set(
      id,
      at.dK.map((dK, i) => (dK * K[i]! + at.dS[i]! * S[i]!) / share),
    );
  }
  for (const [j, column] of frameColumns(palette, at)) column.forEach((v, i) => (shared[j]![i]! += v));
  const byLnKS = at.dK.map((d, i) => (d * at.K[i]! - at.dS[i]! * at.S[i]!) / 2);
  const afresh = discrepancyColumns(palette.discrepancy).map((c) => c.map((d, i) => d * byLnKS[i]!));
  const { sdHaze } = palette.discrepancy;
  if (sdHaze) afresh.push(new Float64Array(GRID_SIZE).fill(sdHaze));
  return { measured: at.measured, shared, own, afresh, byShare };
}
