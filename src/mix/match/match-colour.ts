import type { WhiteName } from '../../colour/illuminant.ts';
import { ciede2000Steps } from '../../colour/ciede2000.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import type { Masses } from '../film-stack.ts';
import { metamerism } from '../metamerism.ts';
import { MixProblem, type Watch } from '../problem.ts';
import { tubeSet } from '../tube-set.ts';
import { type Candidate, EXACT, type Search, searchOn } from '../search/come-down.ts';
import { candidates } from './candidates.ts';
import { forgiveness } from './forgiveness.ts';
import { type Ranked, rank, withoutDisguises } from './rank.ts';
import { type Recipe, gramsOf, recipeOf, reflectanceOfParts } from './recipe.ts';
import { type Priority, type Wanted, type WantedColour, wantedColour, whiteOfWanted } from './wanted.ts';
import { say } from '../sentences.ts';

export interface MatchOptions {
  /** Most tubes in one recipe. @default 4 */
  readonly maxTubes?: number;
  /** How many recipes to give. @default 5 */
  readonly count?: number;
  /** @default 'evenly' */
  readonly priority?: Priority;
  /** Grams of mix wanted; it decides what a slip of 0.02 g does. @default 10 */
  readonly grams?: number;
  /** White to look at a wanted spectrum under; a wanted Lab brings its own. @default 'D65/10deg' */
  readonly white?: WhiteName;
  /** Ids of the tubes to use. @default all */
  readonly only?: readonly string[];
  /** Ids of tubes to leave in their place. */
  readonly without?: readonly string[];
  /** Price of a gram by tube id, any currency; tubes not named cost nothing. */
  readonly prices?: Masses;
  /** Differences of CIEDE2000 smaller than this do not decide the order of recipes. @default 0.02 */
  readonly closeEnough?: number;
  readonly watch?: Watch;
}

export interface MatchResult {
  /** Best first; empty only if every family of tubes was refused, which does not happen with one tube or more. */
  readonly recipes: readonly Recipe[];
  /** True when one of the recipes comes within `reachedDeltaE00` of the colour. */
  readonly reached: boolean;
  /** "out of reach: value kept, too cool by 6", or that it is reached. */
  readonly sentence: string;
}

/** Nearer than this a colour counts as reached, CIEDE2000. Our choice: under what two drawdowns of one mix differ by. */
export const REACHED_DELTA_E00 = 0.1;
const TIE = 0.02;

function checkedCount(name: string, value: number, most: number): number {
  if (!(Number.isInteger(value) && value >= 1 && value <= most)) {
    throw new MixProblem(say('count', { what: name, value, most }));
  }
  return value;
}

/** Colour under the set's white, of the kernel's channels. */
function difference(search: Search, wanted: WantedColour, c: Pick<Candidate, 'tubes' | 'parts'>): number {
  search.kernel.choose(c.tubes);
  search.kernel.colour(c.parts);
  const [L, a, b] = search.kernel.u;
  return ciede2000Steps(wanted.lab, { L: L!, a: a!, b: b! }).dE00;
}

/** What ranking looks at, for one candidate. */
function weigh(search: Search, wanted: WantedColour, candidate: Candidate, options: MatchOptions): Ranked {
  const { set, kernel } = search;
  const { tubes, parts } = candidate;
  const grams = gramsOf(set, tubes, parts, options.grams ?? 10);
  const ids = tubes.map((t) => set.ids[t]!);
  const deltaE00 = difference(search, wanted, candidate);
  const { lightness, value } = wanted.emphasis;
  const off = kernel.u[0]! - wanted.channels.L;
  const heldError =
    lightness > 1 ? Math.abs(off) : value > 0 ? Math.abs(kernel.u[3]! - wanted.channels.valueL!) : 0;
  const here = { L: kernel.u[0]!, a: kernel.u[1]!, b: kernel.u[2]! };
  let leastNeeded = Infinity;
  if (tubes.length > 1) {
    tubes.forEach((_, j) => {
      const x = Float64Array.from(parts);
      x[j] = 0;
      kernel.colour(x);
      const there = { L: kernel.u[0]!, a: kernel.u[1]!, b: kernel.u[2]! };
      leastNeeded = Math.min(leastNeeded, ciede2000Steps(here, there).dE00);
    });
  }
  const slip = forgiveness(
    kernel,
    grams,
    tubes.map((t) => set.strength[t]!),
  );
  return {
    candidate,
    ids,
    heldError,
    deltaE00,
    metamerism: wanted.spectrum
      ? Math.max(
          ...metamerism(wanted.spectrum, reflectanceOfParts(set, tubes, parts), set.white).map(
            (m) => m.deltaE00,
          ),
        )
      : 0,
    slip: slip.deltaE00,
    worstTube: ids[slip.worst]!,
    price: grams.reduce((sum, g, j) => sum + g * (options.prices?.[ids[j]!] ?? 0), 0),
    leastNeeded,
  };
}

/**
 * Recipes for a wanted colour, ranked by CIEDE2000, then fewest tubes, then (for a spectrum) least metamerism, then how
 * forgiving they are, then the price of paint. No two are the same recipe in disguise. The result does not depend on the
 * order of the tubes.
 *
 * Families of up to four tubes are searched through; more than four help only where the colour is out of reach of four,
 * and are then grown from the best.
 * @throws MixProblem for a colour no surface has, an empty palette, unknown ids, numbers out of range.
 * @throws MixingStopped when `watch.shouldStop` says so.
 */
export function matchColour(palette: MixingPalette, target: Wanted, options: MatchOptions = {}): MatchResult {
  const maxTubes = checkedCount(say('most-tubes'), options.maxTubes ?? 4, 64);
  const count = checkedCount(say('recipes'), options.count ?? 5, 100);
  const tie = options.closeEnough ?? TIE;
  if (!((options.grams ?? 10) > 0) || !(tie > 0)) {
    throw new MixProblem(say('amount', { grams: options.grams ?? 10, tie }));
  }
  const wanted = wantedColour(target, options.priority, options.white);
  const set = tubeSet(palette, {
    white: whiteOfWanted(target, options.white),
    ...(options.only ? { only: options.only } : {}),
    ...(options.without ? { without: options.without } : {}),
  });
  const search = searchOn(set);
  const found = candidates(
    search,
    wanted.channels,
    wanted.emphasis,
    Math.min(maxTubes, set.ids.length),
    options.watch,
    // One more tube than an exact recipe is that recipe in disguise.
    Math.min(EXACT, tie * tie),
  );
  const ranked = rank(
    found.map((c) => weigh(search, wanted, c, options)),
    tie,
  );
  const recipes = withoutDisguises(ranked, tie)
    .slice(0, count)
    .map((r) => {
      const grams = gramsOf(set, r.candidate.tubes, r.candidate.parts, options.grams ?? 10);
      const masses = Object.fromEntries(r.ids.map((id, j) => [id, grams[j]!]));
      return recipeOf(set, wanted, masses, { slip: { deltaE00: r.slip, tube: r.worstTube }, price: r.price });
    });
  const best = recipes[0]!;
  // The first may be a little off where one of fewer tubes is close enough: another may still reach it.
  const reached = ranked.some(({ deltaE00 }) => deltaE00 < REACHED_DELTA_E00);
  return {
    recipes,
    reached,
    sentence: reached ? say('within-reach') : say('nearest', { split: best.split.sentence }),
  };
}
