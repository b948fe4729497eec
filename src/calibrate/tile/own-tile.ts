/**
 * Reference values for a painter's own tile, carried over from a tile of known reflectance: read both, and
 * R_own = R_known x S_own / S_known per channel, the head's two-point scale doing the rest. Repeats with the tile
 * taken up and put down give the doubt; the known tile's own doubt is added in squares (JCGM 100:2008, 5.1.2).
 */
import { ReadingRefused } from '../refusal.ts';
import { say } from './sentences.ts';

export interface TileReference {
  readonly reflectance: Float64Array;
  /** Standard uncertainty per channel, absolute. */
  readonly sigma: Float64Array;
  readonly repeats: number;
}

/**
 * @param readings reflectance factors of the own tile, one array per placing, read on a scale set with the known tile
 * @param known the known tile's reflectance factors and, where stated, their standard uncertainties
 * @throws ReadingRefused `too-few` below three placings, `channels-differ`
 */
export function ownTileReference(
  readings: readonly ArrayLike<number>[],
  known: { readonly reflectance: ArrayLike<number>; readonly sigma?: ArrayLike<number> },
): TileReference {
  const n = readings.length;
  if (n < 3) {
    throw new ReadingRefused('too-few', say('placings', { count: n }));
  }
  const size = known.reflectance.length;
  if (readings.some((r) => r.length !== size)) {
    throw new ReadingRefused('channels-differ', say('tile-channels', { channels: size }));
  }
  const reflectance = Float64Array.from(
    { length: size },
    (_, c) => readings.reduce((s, r) => s + r[c]!, 0) / n,
  );
  const sigma = reflectance.map((mean, c) => {
    const scatter = readings.reduce((s, r) => s + (r[c]! - mean) ** 2, 0) / (n - 1) / n;
    const carried = ((known.sigma?.[c] ?? 0) / known.reflectance[c]!) * mean;
    return Math.sqrt(scatter + carried * carried);
  });
  return { reflectance, sigma, repeats: n };
}
