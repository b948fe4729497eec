import type { PaletteProfile } from '../schema.ts';
import type { Bridge } from '../merge/bridge-type.ts';
import { onePalette } from './one-palette.ts';
import { type TubeDifference, tubeDifference } from './tube-difference.ts';

export interface ProfileComparison {
  /** Tubes in both, compared. */
  readonly tubes: readonly TubeDifference[];
  /** Ids of tubes in the older profile only. */
  readonly gone: readonly string[];
  /** Ids of tubes in the newer profile only. */
  readonly added: readonly string[];
}

/**
 * Compares two profiles tube by tube of the same id, or by the pairs given (a new tube under another id). With a bridge
 * the whites may differ.
 * @throws ProfileProblem when the geometries differ, or the whites do and there is no bridge.
 */
export function compareProfiles(
  older: PaletteProfile,
  newer: PaletteProfile,
  pairs: readonly { readonly older: string; readonly newer: string }[] = [],
  bridge?: Bridge,
): ProfileComparison {
  const palette = onePalette(older, newer, bridge);
  const has = (p: PaletteProfile, id: string): boolean => p.tubes.some((t) => t.id === id);
  const same = older.tubes
    .filter((t) => t.id !== older.white && has(newer, t.id) && !pairs.some((p) => p.older === t.id))
    .map((t) => ({ older: t.id, newer: t.id }));
  const all = [...pairs, ...same];
  return {
    tubes: all.map((p) => tubeDifference(palette, `older/${p.older}`, `newer/${p.newer}`)),
    gone: older.tubes
      .filter((t) => t.id !== older.white && !all.some((p) => p.older === t.id))
      .map((t) => t.id),
    added: newer.tubes
      .filter((t) => t.id !== newer.white && !all.some((p) => p.newer === t.id))
      .map((t) => t.id),
  };
}
