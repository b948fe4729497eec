import { ciede2000 } from '../../colour/ciede2000.ts';
import type { Spectrum } from '../../colour/grid.ts';
import type { WhiteName } from '../../colour/illuminant.ts';
import { kOverS } from '../../fit/optics/kubelka-munk.ts';
import { surfaceInverse } from '../../fit/optics/surface.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import type { Masses } from '../film-stack.ts';
import { matchColour } from '../match/match-colour.ts';
import { type Wanted, wantedColour, whiteOfWanted } from '../match/wanted.ts';
import { predictMix } from '../predict-mix.ts';
import { MixProblem } from '../problem.ts';
import { say } from '../sentences.ts';

/**
 * A pile already mixed: grams by tube where they are known, a reading of it where there is one, or both. With a reading
 * alone, `grams` says how much there is and `tubes` what may be in it.
 */
export interface Pile {
  readonly masses?: Masses;
  readonly reading?: Wanted;
  readonly grams?: number;
  readonly tubes?: readonly string[];
}

/** What a search takes for the pile. */
export interface KnownPile {
  readonly masses: Masses;
  readonly grams: number;
  /** True when the masses are an estimate from the reading. */
  readonly estimated: boolean;
  /** CIEDE2000 between the reading and what the masses say; null without a reading. */
  readonly misfit: number | null;
  /** Factor on the pile's absorption that makes it read as it did: a spectrum was read. */
  readonly absorption?: Spectrum;
  /** What the pile reads beyond what its masses say, in L, a, b: only a Lab was read. */
  readonly shift?: { readonly L: number; readonly a: number; readonly b: number };
}

/** Factor on K/S between the reading and the prediction; null where the surface cannot have read that. */
function absorptionFactor(palette: MixingPalette, read: Spectrum, said: Spectrum): Spectrum | null {
  try {
    return read.map(
      (r, i) =>
        kOverS(surfaceInverse(palette.surface, r)) / kOverS(surfaceInverse(palette.surface, said[i]!)),
    );
  } catch {
    // A noisy reading at or under the floor of the surface: the colour is still good for a shift.
    return null;
  }
}

/**
 * Makes out what a pile is.
 * @throws MixProblem when neither masses nor a reading are given, or a reading comes without its grams.
 */
export function knownPile(palette: MixingPalette, pile: Pile, white: WhiteName): KnownPile {
  const { masses, reading } = pile;
  if (!masses && !reading) {
    throw new MixProblem(say('pile-unknown'));
  }
  const of = masses ?? estimate(palette, pile, white);
  const grams = Object.values(of).reduce((a, b) => a + b, 0);
  const said = predictMix(palette, of, reading ? whiteOfWanted(reading, white) : white);
  if (!reading) return { masses: of, grams, estimated: false, misfit: null };
  const read = wantedColour(reading, 'evenly', white);
  const estimated = masses === undefined;
  const misfit = ciede2000(read.lab, said.lab);
  const absorption = read.spectrum ? absorptionFactor(palette, read.spectrum, said.reflectance) : null;
  if (absorption) return { masses: of, grams, estimated, misfit, absorption };
  const shift = { L: read.lab.L - said.lab.L, a: read.lab.a - said.lab.a, b: read.lab.b - said.lab.b };
  return { masses: of, grams, estimated, misfit, shift };
}

/** The recipe of the given tubes that reads nearest the pile. */
function estimate(palette: MixingPalette, pile: Pile, white: WhiteName): Masses {
  if (!(pile.grams !== undefined && pile.grams > 0 && Number.isFinite(pile.grams))) {
    throw new MixProblem(say('pile-grams', { grams: pile.grams ?? say('nothing-known') }));
  }
  const { recipes } = matchColour(palette, pile.reading!, {
    count: 1,
    grams: pile.grams,
    white,
    closeEnough: 1e-3,
    ...(pile.tubes ? { only: pile.tubes, maxTubes: Math.max(1, Math.min(6, pile.tubes.length)) } : {}),
  });
  return recipes[0]!.masses;
}
