import { GRID_SIZE } from '../../colour/grid.ts';
import { ciede2000 } from '../../colour/ciede2000.ts';
import { DEFAULT_WHITE } from '../../colour/illuminant.ts';
import { labOfReflectance } from '../../colour/lab.ts';
import { tristimulusWeights } from '../../colour/tristimulus.ts';
import type { Discrepancy, TubeConstants } from '../../fit/constants.ts';
import { reflectanceOfKOverS } from '../../fit/optics/kubelka-munk.ts';
import { surfaceForward } from '../../fit/optics/surface.ts';
import { type MixingPalette, tubeOf } from '../../fit/palette.ts';
import { bothDiscrepancies } from '../compare/both-discrepancies.ts';
import { paletteOf } from '../palette-of.ts';
import { ProfileProblem } from '../problem.ts';
import { historyOf } from '../replace/put-in-place.ts';
import type { PaletteProfile, ProfileTube } from '../schema.ts';
import { type Bridge, WHAT_TO_MEASURE } from './bridge-type.ts';
import { bridgedTubes } from './bridged-tubes.ts';
import { refuseOtherGeometry } from './refuse-other-geometry.ts';
import { say } from '../sentences.ts';

export interface MergedProfiles {
  readonly profile: PaletteProfile;
  /** Ids of the second profile's tubes that were taken already, and what they are called now. */
  readonly renamed: Readonly<Record<string, string>>;
  /** What was seen while merging, one sentence each. */
  readonly words: readonly string[];
}

/** Most shared columns a profile may carry (schema.ts). */
const MOST_SHARED = 4 * GRID_SIZE;
/** The second white reads otherwise than its own profile says from here on, CIEDE2000. Common practice, no source. */
const WHITE_MOVED = 1;
/** Crowding of the second white that is worth a sentence. Our choice. */
const CROWDING_SAID = 0.02;

/**
 * One profile from two whose whites differ, in the first one's units. The first profile's white is the white of the
 * whole; the second's stays as a tube.
 * @param when ISO 8601; the core has no clock.
 * @throws ProfileProblem without a bridge (and says what to measure), for a bridge between other whites, or for
 * different geometries.
 */
export function mergeProfiles(
  first: PaletteProfile,
  second: PaletteProfile,
  bridge: Bridge | undefined,
  when: string,
): MergedProfiles {
  refuseOtherGeometry(first, second);
  if (!bridge) {
    throw new ProfileProblem(
      say('two-whites', { first: first.white, second: second.white, what: WHAT_TO_MEASURE }),
      'white',
    );
  }
  if (bridge.first !== first.white || bridge.second !== second.white || bridge.geometry !== first.geometry) {
    throw new ProfileProblem(
      say('bridge-joins', {
        first: bridge.first,
        second: bridge.second,
        at: bridge.geometry,
        profileFirst: first.white,
        profileSecond: second.white,
        profileAt: first.geometry,
        what: WHAT_TO_MEASURE,
      }),
      'bridge',
    );
  }
  const [a, b] = [paletteOf(first), paletteOf(second)];
  const tubes = bridgedTubes(a, b, bridge);
  const renamed = newNames(first, second);
  const documented = [
    ...first.tubes.map((t, i) => withConstants(t, tubes.first[i]!)),
    ...second.tubes.map(({ role: _role, ...t }, i) =>
      withConstants({ ...t, id: renamed[t.id] ?? t.id }, tubes.second[i]!),
    ),
  ];
  const columns = documented[0]!.covariance.shared.length;
  if (columns > MOST_SHARED) {
    throw new ProfileProblem(say('too-many-columns', { columns, allowed: MOST_SHARED }));
  }
  const moved = whiteMoved(a, b, bridge);
  const crowding = second.crowding ?? 0;
  const words = [
    bridge.words,
    ...Object.entries(renamed).map(([was, is]) => say('renamed', { was, is })),
    ...(moved > WHITE_MOVED ? [say('white-moved', { deltaE: moved.toFixed(1) })] : []),
    ...(Math.abs(crowding) > CROWDING_SAID
      ? [say('crowding', { percent: (50 * Math.abs(crowding)).toFixed(0) })]
      : []),
  ];
  return {
    profile: documentOf(first, second, documented, bothDiscrepancies(a.discrepancy, b.discrepancy), when),
    renamed,
    words,
  };
}

function documentOf(
  first: PaletteProfile,
  second: PaletteProfile,
  tubes: ProfileTube[],
  discrepancy: Discrepancy,
  when: string,
): PaletteProfile {
  const history = [
    ...historyOf(first),
    ...second.tubes.map((t) => ({
      when,
      what: 'tube added' as const,
      tube: tubes[first.tubes.length + second.tubes.indexOf(t)]!.id,
      note: `merged from "${second.title ?? 'another profile'}" of ${second.created}`,
    })),
  ];
  return {
    ...first,
    created: when,
    tubes,
    discrepancy: { ...discrepancy, sdLnKS: [...discrepancy.sdLnKS] },
    ...widerFrame(first.frameDoubt, tubes[0]!.covariance.shared.length),
    provenance: { ...first.provenance, history },
  };
}

/** The first profile's columns come first, so that its frame follows them and none of those after. */
function widerFrame(
  frameDoubt: PaletteProfile['frameDoubt'],
  width: number,
): Pick<PaletteProfile, 'frameDoubt'> {
  if (!frameDoubt) return {};
  const wider = (v: readonly number[] = []): number[] => Array.from({ length: width }, (_, j) => v[j] ?? 0);
  return { frameDoubt: Object.fromEntries(Object.entries(frameDoubt).map(([n, v]) => [n, wider(v)])) };
}

function withConstants(tube: ProfileTube, constants: TubeConstants): ProfileTube {
  return {
    ...tube,
    K: Array.from(constants.lnK, Math.exp),
    S: Array.from(constants.lnS, Math.exp),
    covariance: { own: constants.own.map((c) => [...c]), shared: constants.shared.map((c) => [...c]) },
  };
}

/** The next free number for every id that both profiles use. */
function newNames(first: PaletteProfile, second: PaletteProfile): Record<string, string> {
  const taken = new Set([...first.tubes, ...second.tubes].map((t) => t.id));
  const out: Record<string, string> = {};
  for (const { id } of second.tubes) {
    if (!first.tubes.some((t) => t.id === id)) continue;
    let n = 2;
    while (taken.has(`${id}-${n}`)) n++;
    taken.add(`${id}-${n}`);
    out[id] = `${id}-${n}`;
  }
  return out;
}

/** CIEDE2000 between the second white's masstone in its own profile and in the bridge. */
function whiteMoved(first: MixingPalette, second: MixingPalette, bridge: Bridge): number {
  const weights = tristimulusWeights(DEFAULT_WHITE);
  const lab = (palette: MixingPalette, lnQ: Float64Array) =>
    labOfReflectance(
      lnQ.map((v) => surfaceForward(palette.surface, reflectanceOfKOverS(Math.exp(v)))),
      weights,
    );
  const own = tubeOf(second, second.white);
  return ciede2000(
    lab(
      second,
      own.lnK.map((v, i) => v - own.lnS[i]!),
    ),
    lab(first, bridge.lnKOverS),
  );
}
