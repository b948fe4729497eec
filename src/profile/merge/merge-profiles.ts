/**
 * One profile from two. Where the whites differ, through a bridge; where they are one white, as they stand, and a tube that
 * is in both is one tube measured twice, perhaps with two instruments. Each tube keeps its own trust and its own doubt.
 */
import { GRID_SIZE } from '../../colour/grid.ts';
import { ciede2000 } from '../../colour/ciede2000.ts';
import { DEFAULT_WHITE } from '../../colour/illuminant.ts';
import { labOfReflectance } from '../../colour/lab.ts';
import { tristimulusWeights } from '../../colour/tristimulus.ts';
import type { Discrepancy, TubeConstants } from '../../fit/constants.ts';
import { misfitColumns } from '../../fit/discrepancy.ts';
import { framedColumns } from '../../fit/frame-doubt.ts';
import { reflectanceOfKOverS } from '../../fit/optics/kubelka-munk.ts';
import { surfaceForward } from '../../fit/optics/surface.ts';
import { type MixingPalette, tubeOf } from '../../fit/palette.ts';
import { paletteOf } from '../palette-of.ts';
import { ProfileProblem } from '../problem.ts';
import { type HistoryEntry, historyOf } from '../replace/put-in-place.ts';
import type { PaletteProfile, ProfileTube } from '../schema.ts';
import { type Bridge, WHAT_TO_MEASURE } from './bridge-type.ts';
import { bridgedTubes } from './bridged-tubes.ts';
import { fewerShared } from './fewer-shared.ts';
import { oneDiscrepancy } from './one-discrepancy.ts';
import { inFrameOf, surerFrame } from './one-white.ts';
import { refuseOtherGeometry } from './refuse-other-geometry.ts';
import { sameTube } from './same-tube.ts';
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

export interface MergeOptions {
  /**
   * What becomes of an id that is in both profiles: one tube, its fits combined, or two tubes, the second renamed.
   * @default 'combined' on one white, 'apart' through a bridge
   */
  readonly sameIds?: 'combined' | 'apart';
}

/**
 * One profile from two, in the first one's units and frame. The first profile's white is the white of the whole; where the
 * second's is another it stays as a tube.
 * @param bridge between the two whites; none where both profiles have one white.
 * @param when ISO 8601; the core has no clock.
 * @throws ProfileProblem for two whites without a bridge (and says what to measure), for a bridge between other whites, for
 * different geometries, or for fits of one id that are plainly of two tubes.
 */
export function mergeProfiles(
  first: PaletteProfile,
  second: PaletteProfile,
  bridge: Bridge | undefined,
  when: string,
  options: MergeOptions = {},
): MergedProfiles {
  refuseOtherGeometry(first, second);
  const [a, b] = [paletteOf(first), paletteOf(second)];
  if (bridge) refuseOtherBridge(bridge, first, second);
  else if (first.white !== second.white) {
    throw new ProfileProblem(
      say('two-whites', { first: first.white, second: second.white, what: WHAT_TO_MEASURE }),
      'white',
    );
  }
  // On one white either frame will do for both: the surer is taken.
  const host = !bridge && surerFrame(b, a) ? second : first;
  const bridged = bridge ? bridgedTubes(a, b, bridge) : inFrameOf(host === first, a, b);
  const discrepancy = oneDiscrepancy(a.discrepancy, b.discrepancy);
  const withRest = (t: TubeConstants, rest: Discrepancy): TubeConstants => ({
    ...t,
    own: [...t.own, ...misfitColumns(rest)],
  });
  const inBoth = new Set(second.tubes.map((t) => t.id).filter((id) => first.tubes.some((t) => t.id === id)));
  const { sameIds = bridge ? 'apart' : 'combined' } = options;
  // One white is one tube, whatever is said of the others.
  const combine = (id: string): boolean =>
    inBoth.has(id) && (sameIds === 'combined' || (!bridge && id === first.white));
  const renamed = newNames(first, second, combine);
  const merged: { tube: ProfileTube; constants: TubeConstants; words?: string }[] = first.tubes.map(
    (t, i) => {
      const one = bridged.first[i]!;
      if (!combine(t.id)) return { tube: t, constants: withRest(one, discrepancy.restOfFirst) };
      const j = second.tubes.findIndex((x) => x.id === t.id);
      return sameTube(t, second.tubes[j]!, one, bridged.second[j]!);
    },
  );
  second.tubes.forEach(({ role: _role, ...t }, i) => {
    if (combine(t.id)) return;
    const constants = withRest(bridged.second[i]!, discrepancy.restOfSecond);
    merged.push({ tube: { ...t, id: renamed[t.id] ?? t.id }, constants });
  });
  const fewer = fewerShared(
    merged.map((m) => m.constants),
    MOST_SHARED,
    framedColumns(paletteOf(host).frameDoubt),
  );
  const documented = merged.map((m, i) => withConstants(m.tube, fewer[i]!));
  const moved = bridge ? whiteMoved(a, b, bridge) : 0;
  const crowding = bridge ? (second.crowding ?? 0) : 0;
  const words = [
    ...(bridge ? [bridge.words] : []),
    ...merged.flatMap((m) => (m.words ? [m.words] : [])),
    ...Object.entries(renamed).map(([was, is]) => say('renamed', { was, is })),
    ...(moved > WHITE_MOVED ? [say('white-moved', { deltaE: moved.toFixed(1) })] : []),
    ...(Math.abs(crowding) > CROWDING_SAID
      ? [say('crowding', { percent: (50 * Math.abs(crowding)).toFixed(0) })]
      : []),
  ];
  const changes = second.tubes.map((t) => ({
    tube: renamed[t.id] ?? t.id,
    what: combine(t.id) ? ('combined' as const) : ('tube added' as const),
  }));
  const { both } = discrepancy;
  return { profile: documentOf(first, second, host, documented, both, changes, when), renamed, words };
}

function refuseOtherBridge(bridge: Bridge, first: PaletteProfile, second: PaletteProfile): void {
  if (bridge.first === first.white && bridge.second === second.white && bridge.geometry === first.geometry) {
    return;
  }
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

function documentOf(
  first: PaletteProfile,
  second: PaletteProfile,
  host: PaletteProfile,
  tubes: ProfileTube[],
  discrepancy: Discrepancy,
  changes: readonly Pick<HistoryEntry, 'tube' | 'what'>[],
  when: string,
): PaletteProfile {
  const history = [
    ...historyOf(first),
    ...changes.map((change) => ({
      when,
      ...change,
      note: `merged from "${second.title ?? 'another profile'}" of ${second.created}`,
    })),
  ];
  const { crowding: _crowding, frameDoubt: _frameDoubt, ...rest } = first;
  return {
    ...rest,
    surface: host.surface,
    ...(host.crowding === undefined ? {} : { crowding: host.crowding }),
    created: when,
    tubes,
    discrepancy: { ...discrepancy, sdLnKS: [...discrepancy.sdLnKS] },
    ...widerFrame(host.frameDoubt, tubes[0]!.covariance.shared.length),
    provenance: { ...first.provenance, history },
  };
}

/** The host's columns come first, so that its frame follows them and none of those after. */
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

/** The next free number for every id that both profiles use and that is not one tube. */
function newNames(
  first: PaletteProfile,
  second: PaletteProfile,
  combine: (id: string) => boolean,
): Record<string, string> {
  const taken = new Set([...first.tubes, ...second.tubes].map((t) => t.id));
  const out: Record<string, string> = {};
  for (const { id } of second.tubes) {
    if (combine(id) || !first.tubes.some((t) => t.id === id)) continue;
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
