/**
 * A new tube in an old one's place, end to end: the short ladder with the old tube as its prior, the profile with the
 * new tube in it, and what differs.
 */
import type { SwatchSet } from '../../calibrate/swatch-set/schema.ts';
import type { TubeConstants } from '../../fit/constants.ts';
import type { PaletteFit } from '../../fit/palette-fit.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import { type TubeDifference, tubeDifference } from '../compare/tube-difference.ts';
import { paletteOf } from '../palette-of.ts';
import { ProfileProblem } from '../problem.ts';
import type { PaletteProfile, ProfileTube } from '../schema.ts';
import { type ShortLadderOptions, newTubeConstants } from './new-tube-constants.ts';
import type { ReplacedTube } from './old-tube-as-prior.ts';
import { putInPlace } from './put-in-place.ts';
import { say } from '../sentences.ts';

/** The new tube as a person names it. */
export type NewTube = Pick<ProfileTube, 'id' | 'label'> &
  Partial<Pick<ProfileTube, 'pigments' | 'density' | 'maker' | 'batch'>>;

export interface TubeReplacement {
  /** The profile with the new tube in the old one's place, and the change in its history. */
  readonly profile: PaletteProfile;
  /** Old tubes as they were and the new one beside them: recipes are carried over with this. */
  readonly both: MixingPalette;
  /** Id of the new tube in `both`. */
  readonly nameInBoth: string;
  /** What the short ladder said by itself, in the profile's terms. */
  readonly measured: TubeConstants;
  readonly prior: ReplacedTube | undefined;
  readonly difference: TubeDifference;
  /** Plain sentences: how alike, what differs, what was seen on the way. */
  readonly words: readonly string[];
}

/** The white reads otherwise than the profile says from here on, CIEDE2000. Our choice. */
const WHITE_SAID = 0.7;
const NAME_IN_BOTH = 'the new tube';

/**
 * @param set the white's masstone, the new tube's masstone and at least one tint of it with the profile's white.
 * @param when ISO 8601; the core has no clock.
 * @throws ProfileProblem when the profile has no such tube or it is the white, the geometry differs, the set lacks a
 * masstone or a tint, or its white is plainly another paint.
 */
export function replaceTube(
  profile: PaletteProfile,
  oldId: string,
  set: SwatchSet,
  tube: NewTube,
  when: string,
  options: ShortLadderOptions = {},
): TubeReplacement {
  refuseMissing(profile, oldId);
  const palette = paletteOf(profile);
  const { fit, inSet, prior, constants, measured, whiteAway } = newTubeConstants(
    profile,
    oldId,
    set,
    options,
  );
  const { tube: asRead, evidence } = fit.tubes.find((t) => t.tube.id === inSet)!;
  const next = putInPlace(
    profile,
    oldId,
    {
      tube: {
        pigments: [...(asRead.pigments ?? [])],
        ...(asRead.density === undefined ? {} : { density: asRead.density }),
        ...tube,
        evidence: {
          ...evidence,
          rungs: evidence.rungs.map((r) => ({ ...r })),
          warnings: [...evidence.warnings, ...(prior ? [prior.words] : [])],
        },
      },
      constants,
    },
    when,
  );
  // A tube measured again may keep its id, and one palette holds an id once.
  const name = profile.tubes.some((t) => t.id === tube.id) ? NAME_IN_BOTH : tube.id;
  const both = { ...palette, tubes: [...palette.tubes, { ...constants, id: name, label: tube.label }] };
  const difference = tubeDifference(both, oldId, name);
  return {
    profile: next,
    both,
    nameInBoth: name,
    measured,
    prior,
    difference,
    words: [
      ...(prior ? [prior.words] : []),
      ...difference.words,
      ...(whiteAway > WHITE_SAID ? [say('white-otherwise', { deltaE: whiteAway.toFixed(1) })] : []),
      ...warningsOf(fit),
    ],
  };
}

/** Said before anything is fitted. */
function refuseMissing(profile: PaletteProfile, oldId: string): void {
  if (!profile.tubes.some((t) => t.id === oldId)) {
    throw new ProfileProblem(
      say('no-tube-to-replace', { id: oldId, known: profile.tubes.map((t) => t.id).join(', ') }),
    );
  }
}

function warningsOf(fit: PaletteFit): string[] {
  return [
    ...fit.warnings,
    ...(fit.status === 'stopped' ? [say('short-fit-stopped', { message: fit.message })] : []),
  ];
}
