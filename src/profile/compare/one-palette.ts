import type { TubeConstants } from '../../fit/constants.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import { paletteOf } from '../palette-of.ts';
import { ProfileProblem } from '../problem.ts';
import type { PaletteProfile } from '../schema.ts';

/**
 * Two profiles as one palette, tube ids prefixed "older/" and "newer/" save the white, which is the older profile's.
 * Doubt shared within one profile is not shared with the other, so its columns stand side by side.
 * @throws ProfileProblem when the whites or the geometries differ: constants are relative to the white's scattering,
 * and a difference of whites cannot be told from a difference of tubes without a bridge.
 */
export function onePalette(older: PaletteProfile, newer: PaletteProfile): MixingPalette {
  if (older.white !== newer.white) {
    throw new ProfileProblem(
      `The profiles rest on different whites ("${older.white}" and "${newer.white}"): read the masstone and one tint of one white in the other, and give that bridge.`,
      'white',
    );
  }
  if (older.geometry !== newer.geometry) {
    throw new ProfileProblem(
      `One profile was read at ${older.geometry}, the other at ${newer.geometry}: read the new tubes with the old geometry.`,
      'geometry',
    );
  }
  const a = paletteOf(older);
  const b = paletteOf(newer);
  const widthA = a.tubes[0]!.shared.length;
  const widthB = b.tubes[0]!.shared.length;
  const zeros = (n: number): Float64Array[] => Array.from({ length: n }, () => new Float64Array(72));
  const white = a.white;
  const rename = (t: TubeConstants, prefix: string, shared: readonly Float64Array[]): TubeConstants => ({
    ...t,
    id: `${prefix}${t.id}`,
    shared,
  });
  return {
    ...a,
    tubes: [
      ...a.tubes.map((t) => rename(t, t.id === white ? '' : 'older/', [...t.shared, ...zeros(widthB)])),
      ...b.tubes
        .filter((t) => t.id !== white)
        .map((t) => rename(t, 'newer/', [...zeros(widthA), ...t.shared])),
    ],
    discrepancy: {
      correlationNm: a.discrepancy.correlationNm,
      sdLnKS: a.discrepancy.sdLnKS.map((v, i) => Math.max(v, b.discrepancy.sdLnKS[i]!)),
    },
  };
}
