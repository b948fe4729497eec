import { GRID_SIZE } from '../../colour/grid.ts';
import type { TubeConstants } from '../../fit/constants.ts';
import { type MixingPalette, tubeOf } from '../../fit/palette.ts';
import type { Bridge } from './bridge-type.ts';
import { followingFrame, reexpressed } from './reexpress.ts';

/** Tubes of two palettes in the first one's units, with covariance columns of one set. */
export interface BridgedTubes {
  readonly first: readonly TubeConstants[];
  /** Every tube of the second palette, its white among them as an ordinary tube. */
  readonly second: readonly TubeConstants[];
}

const N = GRID_SIZE;
const none = new Float64Array(2 * N);
const zeros = (n: number): Float64Array[] => Array.from({ length: n }, () => new Float64Array(2 * N));
/** A change of unit moves K and S alike. */
const both = (v: Float64Array): Float64Array => Float64Array.from([...v, ...v]);
const halfS = (c: Float64Array): Float64Array => c.slice(N);
const plus = (a: Float64Array, b: Float64Array, sign = 1): Float64Array => a.map((v, i) => v + sign * b[i]!);

/**
 * Puts the second palette's tubes into the first one's units: ln K and ln S gain ln(S_B/S_A) of the bridge, plus the
 * first white's ln S and minus the second's where films of finite thickness let them be other than 0. Doubt: columns
 * of the first palette, of the second, and of the bridge stand side by side; what moves the unit moves every tube of
 * the second palette at once.
 *
 * Crowding belongs to the palette's white alone. The second white becomes an ordinary tube, so its crowding is put at
 * its middle (1 + crowding/2) with the rest, evenly spread, as doubt of its own.
 */
export function bridgedTubes(first: MixingPalette, other: MixingPalette, bridge: Bridge): BridgedTubes {
  const crowding = other.crowding ?? 0;
  const second = reexpressed(other, { surface: first.surface, crowding });
  // The first white's crowding is in none of the second's tubes; its surface is.
  const { crowding: _crowding, ...surfaceDoubt } = first.frameDoubt ?? {};
  const following = followingFrame(second, { frameDoubt: surfaceDoubt });
  const a = tubeOf(first, first.white);
  const b = tubeOf(second, second.white);
  const widthB = b.shared.length;
  const bridgeColumns = bridge.factor.map(both);
  const unit = bridge.lnRatio.map((v, i) => v + a.lnS[i]! - b.lnS[i]!);
  return {
    first: first.tubes.map((t) => ({
      ...t,
      shared: [...t.shared, ...zeros(widthB), ...zeros(bridgeColumns.length)],
    })),
    second: second.tubes.map((t, index) => {
      const isWhite = t.id === second.white;
      const middle = isWhite ? Math.log1p(crowding / 2) : 0;
      const spread = Math.abs(crowding) / 2 / Math.sqrt(3) / (1 + crowding / 2);
      return {
        ...t,
        lnK: plus(t.lnK, unit),
        lnS: plus(t.lnS, unit).map((v) => v + middle),
        own: [
          ...t.own,
          ...(isWhite && spread > 0
            ? [Float64Array.from({ length: 2 * N }, (_, i) => (i < N ? 0 : spread))]
            : []),
        ],
        shared: [
          ...a.shared.map((c, j) => plus(both(halfS(c)), following[index]!.get(j) ?? none)),
          ...t.shared.map((c, j) => plus(c, both(halfS(b.shared[j]!)), -1)),
          ...bridgeColumns,
        ],
      };
    }),
  };
}
