import { ciede2000 } from '../../colour/ciede2000.ts';
import { DEFAULT_WHITE } from '../../colour/illuminant.ts';
import { labOfReflectance } from '../../colour/lab.ts';
import { tristimulusWeights } from '../../colour/tristimulus.ts';
import type { TubeConstants } from '../../fit/constants.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import { predictReflectance } from '../../fit/predict.ts';
import { type Bridge, WHAT_TO_MEASURE } from '../merge/bridge-type.ts';
import { bridgedTubes } from '../merge/bridged-tubes.ts';
import { refuseOtherGeometry } from '../merge/refuse-other-geometry.ts';
import { followingFrame, reexpressed } from '../merge/reexpress.ts';
import { paletteOf } from '../palette-of.ts';
import { ProfileProblem } from '../problem.ts';
import type { PaletteProfile } from '../schema.ts';
import { bothDiscrepancies } from './both-discrepancies.ts';
import { say } from '../sentences.ts';

/** Two readings of one white differ by less than this, CIEDE2000. Common practice, no source. */
const SAME_WHITE = 1.5;

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
  refuseOtherWhite(a, b);
  const there = reexpressed(b, a);
  const following = followingFrame(there, a);
  const byHost = (t: number): Float64Array[] => zeros(widthA).map((none, j) => following[t]!.get(j) ?? none);
  const zeros = (n: number): Float64Array[] => Array.from({ length: n }, () => new Float64Array(72));
  const widthA = a.tubes[0]!.shared.length;
  const widthB = b.tubes[0]!.shared.length;
  return {
    ...a,
    tubes: [
      ...a.tubes.map((t) => ({ ...olderName(t), shared: [...t.shared, ...zeros(widthB)] })),
      ...there.tubes.flatMap((t, i) =>
        t.id === b.white ? [] : [{ ...named(t, 'newer/'), shared: [...byHost(i), ...t.shared] }],
      ),
    ],
    discrepancy,
  };
}

function refuseOtherWhite(a: MixingPalette, b: MixingPalette): void {
  if (a.white !== b.white) {
    throw new ProfileProblem(
      say('different-whites', { first: a.white, second: b.white, what: WHAT_TO_MEASURE }),
      'white',
    );
  }
  const lab = (p: MixingPalette) =>
    labOfReflectance(predictReflectance(p, { [p.white]: 1 }).measured, tristimulusWeights(DEFAULT_WHITE));
  const apart = ciede2000(lab(a), lab(b));
  if (apart > SAME_WHITE) {
    throw new ProfileProblem(
      say('same-name-whites', { white: a.white, apart: apart.toFixed(1), what: WHAT_TO_MEASURE }),
      'white',
    );
  }
}
