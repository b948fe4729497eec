import type { TubeConstants } from '../../fit/constants.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import type { Bridge } from '../merge/bridge-type.ts';
import { bridgedTubes } from '../merge/bridged-tubes.ts';
import { oneWhiteTubes } from '../merge/one-white.ts';
import { refuseOtherGeometry } from '../merge/refuse-other-geometry.ts';
import { paletteOf } from '../palette-of.ts';
import type { PaletteProfile } from '../schema.ts';
import { bothDiscrepancies } from './both-discrepancies.ts';

/**
 * Two profiles as one palette, tube ids prefixed "older/" and "newer/" save the white, which is the older profile's.
 * Where the surface or the crowding were estimated apart, the newer tubes are given the constants that read the same
 * under the older ones. Doubt shared within one profile is not shared with the other, so its columns stand side by
 * side. With a bridge the newer white stays in the palette as "newer/<id>".
 * @throws ProfileProblem when the geometries differ, or the whites do and no bridge is given: constants are relative to
 * the white's scattering, and a difference of whites cannot be told from a difference of tubes without one.
 */
export function onePalette(older: PaletteProfile, newer: PaletteProfile, bridge?: Bridge): MixingPalette {
  refuseOtherGeometry(older, newer);
  const a = paletteOf(older);
  const b = paletteOf(newer);
  const discrepancy = bothDiscrepancies(a.discrepancy, b.discrepancy);
  const named = (t: TubeConstants, prefix: string): TubeConstants => ({ ...t, id: `${prefix}${t.id}` });
  const olderName = (t: TubeConstants): TubeConstants => (t.id === a.white ? t : named(t, 'older/'));
  if (bridge) {
    const { first, second } = bridgedTubes(a, b, bridge);
    return { ...a, tubes: [...first.map(olderName), ...second.map((t) => named(t, 'newer/'))], discrepancy };
  }
  const { first, second } = oneWhiteTubes(a, b);
  return {
    ...a,
    tubes: [
      ...first.map(olderName),
      ...second.filter((t) => t.id !== b.white).map((t) => named(t, 'newer/')),
    ],
    discrepancy,
  };
}
