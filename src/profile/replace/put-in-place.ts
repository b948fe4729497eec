import type { TubeConstants } from '../../fit/constants.ts';
import { WHAT_TO_MEASURE } from '../merge/bridge-type.ts';
import { ProfileProblem } from '../problem.ts';
import type { PaletteProfile, ProfileTube } from '../schema.ts';
import { say } from '../sentences.ts';

/** One line of a profile's history: what changed, when, from what. */
export interface HistoryEntry {
  /** ISO 8601 */
  readonly when: string;
  readonly what: 'tube added' | 'tube replaced' | 'tube removed' | 'measured again' | 'combined';
  readonly tube: string;
  readonly replaces?: string;
  readonly note?: string;
}

/** The new tube: what a person says of it, and what its short ladder gave. */
export interface Replacement {
  readonly tube: Pick<ProfileTube, 'id' | 'label' | 'pigments' | 'density' | 'maker' | 'batch' | 'evidence'>;
  readonly constants: TubeConstants;
}

/** The history a profile carries, oldest first. */
export function historyOf(profile: PaletteProfile): readonly HistoryEntry[] {
  const history = (profile.provenance as { history?: unknown } | undefined)?.history;
  return Array.isArray(history) ? (history as HistoryEntry[]) : [];
}

/**
 * The profile with a new tube in an old one's place. The old tube leaves; its constants stay in the history's profile
 * files, not here. Shared covariance columns must be as many as the profile's.
 * @throws ProfileProblem when there is no such tube, the white is to be replaced, or the columns do not agree.
 */
export function putInPlace(
  profile: PaletteProfile,
  oldId: string,
  replacement: Replacement,
  when: string,
): PaletteProfile {
  const at = profile.tubes.findIndex((t) => t.id === oldId);
  if (at < 0) {
    throw new ProfileProblem(
      say('no-tube-to-replace', { id: oldId, known: profile.tubes.map((t) => t.id).join(', ') }),
    );
  }
  if (oldId === profile.white) {
    throw new ProfileProblem(say('new-white', { what: WHAT_TO_MEASURE }));
  }
  const { tube, constants } = replacement;
  if (tube.id !== oldId && profile.tubes.some((t) => t.id === tube.id)) {
    throw new ProfileProblem(say('tube-there', { id: tube.id }));
  }
  const width = profile.tubes[0]!.covariance.shared.length;
  if (constants.shared.length !== width) {
    throw new ProfileProblem(say('new-tube-columns', { count: constants.shared.length, wanted: width }));
  }
  const entry: ProfileTube = {
    ...tube,
    K: Array.from(constants.lnK, Math.exp),
    S: Array.from(constants.lnS, Math.exp),
    covariance: { own: constants.own.map((c) => [...c]), shared: constants.shared.map((c) => [...c]) },
  };
  const line: HistoryEntry = {
    when,
    what: tube.id === oldId ? 'measured again' : 'tube replaced',
    tube: tube.id,
    replaces: oldId,
  };
  return {
    ...profile,
    created: when,
    tubes: profile.tubes.map((t, i) => (i === at ? entry : t)),
    provenance: { ...profile.provenance, history: [...historyOf(profile), line] },
  };
}
