/**
 * What a short ladder says of a new tube, in a profile's terms: fitted through the profile's surface, given the K and S
 * that read the same under its crowding, and where that helps with the old tube as prior.
 */
import { pilesOf, sharesOfPile } from '../../calibrate/swatch-set/piles.ts';
import type { SwatchSet } from '../../calibrate/swatch-set/schema.ts';
import { ciede2000 } from '../../colour/ciede2000.ts';
import { DEFAULT_WHITE } from '../../colour/illuminant.ts';
import { labOfReflectance } from '../../colour/lab.ts';
import { tristimulusWeights } from '../../colour/tristimulus.ts';
import type { TubeConstants } from '../../fit/constants.ts';
import { fitPalette } from '../../fit/fit-palette.ts';
import type { PaletteFit } from '../../fit/palette-fit.ts';
import { type MixingPalette, tubeOf } from '../../fit/palette.ts';
import { predictReflectance } from '../../fit/predict.ts';
import { followingFrame, reexpressed } from '../merge/reexpress.ts';
import { paletteOf } from '../palette-of.ts';
import { ProfileProblem } from '../problem.ts';
import type { PaletteProfile } from '../schema.ts';
import { type ReplacedTube, oldTubeAsPrior } from './old-tube-as-prior.ts';
import { say } from '../sentences.ts';

export interface ShortLadderOptions {
  /** Id of the new tube in the short set. @default its only tube that is not the white */
  readonly inSet?: string;
  /**
   * Whether the old tube lends its shape. `where it helps`: to a ladder read in a few bands or three channels, whose own
   * readings leave the shape open. A ladder read across the spectrum knows better by itself (docs/exchange.md has the
   * figures). @default 'where it helps'
   */
  readonly oldTube?: 'where it helps' | 'always' | 'never';
  /** Refit with each rung left out, for the evidence. @default true */
  readonly leaveOneOut?: boolean;
}

export interface NewTubeConstants {
  readonly fit: PaletteFit;
  /** Id of the new tube in the short set. */
  readonly inSet: string;
  /** What the short ladder said by itself. */
  readonly measured: TubeConstants;
  readonly prior: ReplacedTube | undefined;
  /** What to use: with the prior where there is one. */
  readonly constants: TubeConstants;
  /** CIEDE2000 by which the white of the short ladder reads otherwise than the profile's. */
  readonly whiteAway: number;
}

/** The white of the short ladder is another paint from here on, CIEDE2000. Our choice. */
const WHITE_REFUSED = 2.5;

/**
 * @param set the white's masstone, the new tube's masstone and at least one tint of it with the profile's white.
 * @throws ProfileProblem when the geometry differs, the set lacks a masstone or a tint, or its white is plainly another
 * paint.
 */
export function newTubeConstants(
  profile: PaletteProfile,
  oldId: string,
  set: SwatchSet,
  options: ShortLadderOptions = {},
): NewTubeConstants {
  const palette = paletteOf(profile);
  const inSet = tubeInSet(profile, set, options.inSet);
  const shares = sharesPainted(set, inSet);
  const fit = fitPalette(set, {
    surface: palette.surface,
    estimate: [],
    leaveOneOut: options.leaveOneOut ?? true,
  });
  const away = whiteAway(palette, fit.palette);
  const there = reexpressed(fit.palette, palette, shares);
  const follows = followingFrame(there, palette, shares)[there.tubes.findIndex((t) => t.id === inSet)]!;
  const measured = independent(tubeOf(there, inSet), palette, follows);
  const old = palette.tubes.find((t) => t.id === oldId);
  const { oldTube = 'where it helps' } = options;
  const lends = oldTube === 'always' || (oldTube === 'where it helps' && set.instrument.kind !== 'spectral');
  const prior = old && oldId !== profile.white && lends ? oldTubeAsPrior(measured, old) : undefined;
  return { fit, inSet, measured, prior, constants: prior?.constants ?? measured, whiteAway: away };
}

function tubeInSet(profile: PaletteProfile, set: SwatchSet, asked: string | undefined): string {
  if (set.instrument.geometry !== profile.geometry) {
    throw new ProfileProblem(
      say('short-geometry', { short: set.instrument.geometry, profile: profile.geometry }),
      'geometry',
    );
  }
  const others = set.tubes.filter((t) => t.role !== 'white').map((t) => t.id);
  if (asked !== undefined && others.includes(asked)) return asked;
  if (asked !== undefined || others.length !== 1) {
    throw new ProfileProblem(
      say('short-which', { tubes: others.map((id) => `"${id}"`).join(', ') || say('only-white') }),
    );
  }
  return others[0]!;
}

/** Shares of the new tube with the white alone. @throws ProfileProblem where a masstone or every tint is missing. */
function sharesPainted(set: SwatchSet, id: string): number[] {
  const piles = pilesOf(set);
  const t = piles.tubeIds.indexOf(id);
  const w = piles.tubeIds.indexOf(set.tubes.find((x) => x.role === 'white')!.id);
  const zero = new Float64Array(piles.errorCount);
  const shares = set.swatches
    .map((s) => sharesOfPile(piles, piles.pileOf.get(s.id)!, zero).shares)
    .filter((c) => c[t]! > 0 && c[t]! + c[w]! > 1 - 1e-9)
    .map((c) => c[t]!);
  const missing = shares.includes(1)
    ? shares.some((c) => c < 1)
      ? undefined
      : say('a-tint')
    : say('the-masstone');
  if (missing) {
    throw new ProfileProblem(say('short-lacks', { missing, tube: id }));
  }
  return [...new Set(shares)];
}

/**
 * Doubt of another sitting moves no other tube of the profile: it is the new tube's own. What it does share is the frame:
 * its constants are those that read the same, wherever that stands.
 */
function independent(
  tube: TubeConstants,
  palette: MixingPalette,
  follows: ReadonlyMap<number, Float64Array>,
): TubeConstants {
  const width = palette.tubes[0]!.shared.length;
  return {
    ...tube,
    own: [...tube.own, ...tube.shared],
    shared: Array.from({ length: width }, (_, j) => follows.get(j) ?? new Float64Array(tube.lnK.length * 2)),
  };
}

function whiteAway(palette: MixingPalette, fitted: MixingPalette): number {
  const lab = (p: MixingPalette) =>
    labOfReflectance(predictReflectance(p, { [p.white]: 1 }).measured, tristimulusWeights(DEFAULT_WHITE));
  const away = ciede2000(lab(palette), lab(fitted));
  if (away > WHITE_REFUSED) {
    throw new ProfileProblem(say('short-white', { deltaE: away.toFixed(1) }), 'white');
  }
  return away;
}
