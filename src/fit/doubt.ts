import { GRID_SIZE } from '../colour/grid.ts';
import { discrepancyColumns } from './discrepancy.ts';
import { type MixingPalette, tubeOf } from './palette.ts';

/** A number computed from constants, with one standard deviation. */
export interface WithDoubt {
  readonly value: number;
  readonly sd: number;
}

/** How a number answers to what is doubtful about it, to first order. */
export interface Slopes {
  /** By tube id: slopes by its 36 ln K, then by its 36 ln S. */
  readonly tubes: ReadonlyMap<string, Float64Array>;
  /** Of each film it rests on: slopes by that film's own deviation in ln(K/S), which the equations miss. */
  readonly afresh: readonly Float64Array[];
  /** By shared column: what surface and crowding do, beside the tubes. Absent: nothing. */
  readonly frame?: ReadonlyMap<number, number>;
}

/** sum of w_k times slopes_k: the slopes of a number made of others. */
export function combined(...parts: readonly (readonly [weight: number, slopes: Slopes])[]): Slopes {
  const tubes = new Map<string, Float64Array>();
  const frame = new Map<number, number>();
  for (const [weight, slopes] of parts) {
    for (const [j, v] of slopes.frame ?? []) frame.set(j, (frame.get(j) ?? 0) + weight * v);
    for (const [id, g] of slopes.tubes) {
      const into = tubes.get(id) ?? new Float64Array(2 * GRID_SIZE);
      g.forEach((v, i) => (into[i]! += weight * v));
      tubes.set(id, into);
    }
  }
  return { tubes, frame, afresh: parts.flatMap(([w, s]) => s.afresh.map((g) => g.map((v) => w * v))) };
}

/** The same film's slopes twice over: both numbers move with one deviation of that film. */
export function combinedOfOneFilm(...parts: readonly (readonly [weight: number, slopes: Slopes])[]): Slopes {
  const { tubes, afresh, ...rest } = combined(...parts);
  const sum = new Float64Array(GRID_SIZE);
  for (const g of afresh) g.forEach((v, i) => (sum[i]! += v));
  return { ...rest, tubes, afresh: [sum] };
}

/**
 * Standard deviation of a number with these slopes, from the tubes' own doubt, the shared one (which counts once for
 * all tubes), and what the equations miss of each film.
 */
export function sdOf(palette: MixingPalette, { tubes, afresh, frame }: Slopes): number {
  let variance = 0;
  const sharedCount = Math.max(0, ...palette.tubes.map((t) => t.shared.length));
  const shared = new Float64Array(sharedCount);
  for (const [id, g] of tubes) {
    const tube = tubeOf(palette, id);
    for (const column of tube.own) variance += dot(g, column) ** 2;
    tube.shared.forEach((column, j) => (shared[j]! += dot(g, column)));
  }
  for (const [j, v] of frame ?? []) shared[j]! += v;
  for (const v of shared) variance += v * v;
  const columns = discrepancyColumns(palette.discrepancy);
  for (const g of afresh) for (const column of columns) variance += dot(g, column) ** 2;
  return Math.sqrt(variance);
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
