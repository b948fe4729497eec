/**
 * A recipe written for one tube, carried to the tube that took its place: the same other tubes, the new one in the
 * old one's stead, and amounts solved again for the colour the recipe gave before.
 */
import { DEFAULT_WHITE, type WhiteName } from '../../colour/illuminant.ts';
import { type MixingPalette, knownTubes, labelOf } from '../../fit/palette.ts';
import type { Masses } from '../film-stack.ts';
import { type Candidate, type Search, comeDown, searchOn } from '../search/come-down.ts';
import { type ColourSplit, splitDifference } from '../match/difference.ts';
import { type Priority, type WantedColour, wantedColour } from '../match/wanted.ts';
import { type MixPrediction, predictMix } from '../predict-mix.ts';
import { MixProblem } from '../problem.ts';
import { differenceGoal } from '../search/goal.ts';
import { tubeIndex, tubeSet } from '../tube-set.ts';
import { type CarriedOutcome, carriedOutcome, carriedSentence } from './carried-words.ts';
import { say } from '../sentences.ts';

/** Old tube's id to the id of the tube in its place. */
export type Replacements = Readonly<Record<string, string>>;

export interface CarryOptions {
  /** What to hold where not everything can be kept. @default 'evenly' */
  readonly priority?: Priority;
  /** @default 'D65/10deg' */
  readonly white?: WhiteName;
  /**
   * Grams of the carried mix. Absent: the tubes that stay keep their weight between them, so that a tube twice as
   * strong shows as half the grams of it (a recipe of replaced tubes alone keeps its whole weight).
   */
  readonly grams?: number;
}

/** What becomes of one pour. */
export interface PourChange {
  /** The tube now poured. */
  readonly tube: string;
  /** The tube it stands for; the same where it stays. */
  readonly before: string;
  readonly gramsBefore: number;
  /** 0 where the new mix does without it. */
  readonly grams: number;
}

export interface CarriedRecipe {
  readonly before: Masses;
  /** Grams by tube id; the nearest mix there is where the outcome is `out of reach`. */
  readonly masses: Masses;
  readonly changes: readonly PourChange[];
  readonly outcome: CarriedOutcome;
  /** CIEDE2000 left over, new mix against old. */
  readonly deltaE00: number;
  readonly split: ColourSplit;
  readonly prediction: MixPrediction;
  /** One line: whether the colour is kept, what is left over, and what changes in grams. */
  readonly sentence: string;
}

/** Strengths tried for the new tube before amounts are solved, in natural logarithm of effective parts. */
const STRENGTHS = Array.from({ length: 49 }, (_, i) => (i - 24) / 8);

function checkedReplacements(palette: MixingPalette, replacements: Replacements): void {
  const known = palette.tubes.map((t) => t.id);
  for (const id of Object.entries(replacements).flat()) {
    if (!known.includes(id)) {
      throw new MixProblem(say('unknown-carried', { id, known: knownTubes(palette.tubes) }));
    }
  }
  const twice = Object.values(replacements).find((id, i, all) => all.indexOf(id) !== i);
  if (twice !== undefined) {
    throw new MixProblem(say('same-place', { tube: labelOf(palette, twice) }));
  }
}

/**
 * Carries one recipe over. The palette holds the old tubes and the new ones (`onePalette` makes it of two profiles);
 * masses are grams by tube id. A recipe without a replaced tube comes back as it is.
 * @throws MixProblem for an unknown tube, a new tube that is already in the recipe, or masses that are no recipe.
 */
export function carryRecipe(
  palette: MixingPalette,
  recipe: Masses,
  replacements: Replacements,
  options: CarryOptions = {},
): CarriedRecipe {
  checkedReplacements(palette, replacements);
  const white = options.white ?? DEFAULT_WHITE;
  const before = Object.fromEntries(Object.entries(recipe).filter(([, grams]) => grams !== 0));
  const target = predictMix(palette, before, white);
  const olds = Object.keys(before).toSorted();
  const news = olds.map((id) => replacements[id] ?? id);
  const clash = news.find((id, i) => news.indexOf(id) !== i);
  if (clash !== undefined) {
    throw new MixProblem(say('clash', { tube: labelOf(palette, clash) }));
  }
  const wanted = wantedColour({ spectrum: target.reflectance }, options.priority, white);
  const shares = olds.every((id, i) => id === news[i])
    ? olds.map((id) => before[id]!)
    : solved(palette, before, olds, news, wanted, white);
  const scale = scaleOf(olds, news, before, shares, options.grams);
  const changes = olds.map((id, i) => ({
    tube: news[i]!,
    before: id,
    gramsBefore: before[id]!,
    grams: shares[i]! * scale,
  }));
  const masses = Object.fromEntries(
    changes.filter((c) => c.grams > 0).map((c) => [c.tube, c.grams] as const),
  );
  const prediction = predictMix(palette, masses, white);
  const split = splitDifference(target.lab, prediction.lab, prediction.value - target.value);
  const outcome = carriedOutcome(split.deltaE00);
  return {
    before,
    masses,
    changes,
    outcome,
    deltaE00: split.deltaE00,
    split,
    prediction,
    sentence: carriedSentence(outcome, split, changes, (id) => labelOf(palette, id)),
  };
}

/** Masses, up to a common factor, in the order of `news`. */
function solved(
  palette: MixingPalette,
  before: Masses,
  olds: readonly string[],
  news: readonly string[],
  wanted: WantedColour,
  white: WhiteName,
): number[] {
  const set = tubeSet(palette, { white, only: [...new Set([...olds, ...news])] });
  const search = searchOn(set);
  const order = news.map((id) => tubeIndex(set, id));
  const tubes = order.toSorted((a, b) => a - b);
  const place = tubes.map((t) => order.indexOf(t));
  const start = place.map((i) => before[olds[i]!]! * set.strength[tubeIndex(set, olds[i]!)]!);
  const replaced = place.map((i) => olds[i] !== news[i]);
  const found = bestOf(search, wanted, tubes, start, replaced);
  return news.map((_, i) => {
    const at = found.tubes.indexOf(order[i]!);
    return at < 0 ? 0 : found.parts[at]! / set.strength[order[i]!]!;
  });
}

/**
 * Down from the old amounts with the new tubes at the strength that fits best; with so many tubes that a colour can be
 * had in several ways, the way nearest to the old recipe is found, and a recipe that needs no change gets none.
 */
function bestOf(
  search: Search,
  wanted: WantedColour,
  tubes: readonly number[],
  start: readonly number[],
  replaced: readonly boolean[],
): Candidate {
  const goal = differenceGoal(wanted.channels, wanted.emphasis);
  const { kernel } = search;
  kernel.choose(tubes);
  const at = (ln: number): Float64Array =>
    Float64Array.from(start, (v, j) => (replaced[j] ? v * Math.exp(ln) : v));
  let best = { x: at(0), cost: Number.POSITIVE_INFINITY };
  for (const ln of [0, ...STRENGTHS]) {
    const x = at(ln);
    kernel.colour(x);
    const cost = goal.cost(kernel.u);
    if (cost < best.cost) best = { x, cost };
  }
  return comeDown(search, goal, tubes, best.x, false)!;
}

function scaleOf(
  olds: readonly string[],
  news: readonly string[],
  before: Masses,
  shares: readonly number[],
  grams: number | undefined,
): number {
  const total = shares.reduce((a, b) => a + b, 0);
  if (grams !== undefined) {
    if (!(grams > 0 && Number.isFinite(grams))) {
      throw new MixProblem(say('carried-grams', { grams }));
    }
    return grams / total;
  }
  const stays = olds.map((id, i) => id === news[i]);
  const kept = shares.reduce((sum, v, i) => (stays[i] ? sum + v : sum), 0);
  const weighed = olds.reduce((sum, id, i) => (stays[i] ? sum + before[id]! : sum), 0);
  if (kept > 0) return weighed / kept;
  return olds.reduce((sum, id) => sum + before[id]!, 0) / total;
}
