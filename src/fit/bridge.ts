/**
 * Moving tubes from one white to another. Constants are in units of their white's scattering. Where white B was measured
 * as a paint in white A, S_B is known in A's units, and a tube measured in B has K_A = K_B-units * S_B, and S likewise:
 * exact for films that hide, where only ratios count.
 */
import { GRID_SIZE } from '../colour/grid.ts';
import type { TubeConstants } from './constants.ts';
import { say } from './sentences.ts';

/**
 * @param tubes constants in units of white B (B among them or not); their shared columns are of one palette.
 * @param bridge white B as measured in white A.
 * @returns the tubes in A's units. B's own doubt, and what B owes to A, are added as shared columns: every moved tube
 * stands on the same bridge. Shared columns come in the order: the bridge's shared, the bridge's own, the tubes' shared.
 * @throws RangeError where the bridge has not 36 constants.
 */
export function moveToWhite(tubes: readonly TubeConstants[], bridge: TubeConstants): TubeConstants[] {
  if (bridge.lnS.length !== GRID_SIZE) {
    throw new RangeError(
      say('bridge-size', { bridge: bridge.id, count: bridge.lnS.length, wanted: GRID_SIZE }),
    );
  }
  // The bridge moves ln K and ln S of every tube by its own ln S.
  const both = (column: Float64Array): Float64Array => {
    const lnS = column.subarray(GRID_SIZE);
    return Float64Array.from({ length: 2 * GRID_SIZE }, (_, i) => lnS[i % GRID_SIZE]!);
  };
  const carried = [...bridge.shared, ...bridge.own].map(both);
  return tubes.map((tube) => ({
    id: tube.id,
    lnK: tube.lnK.map((v, i) => v + bridge.lnS[i]!),
    lnS: tube.lnS.map((v, i) => v + bridge.lnS[i]!),
    own: tube.own,
    shared: [...carried.map((c) => Float64Array.from(c)), ...tube.shared],
  }));
}
