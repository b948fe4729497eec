import { DEFAULT_WHITE, type WhiteName } from '../../colour/illuminant.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import { withBlends } from '../blend.ts';
import type { Masses } from '../film-stack.ts';
import { searchOn } from '../search/come-down.ts';
import { type ColourSplit, splitDifference } from '../match/difference.ts';
import { type Priority, type Wanted, wantedColour, whiteOfWanted } from '../match/wanted.ts';
import type { Scale } from '../pour/scale.ts';
import { MixProblem, type Watch } from '../problem.ts';
import { differenceGoal, quadraticGoal } from '../search/goal.ts';
import { tubeSet } from '../tube-set.ts';
import { additionSentence } from './addition-words.ts';
import { type Afresh, mixAfresh } from './afresh.ts';
import {
  type AdditionProblem,
  type RoughAddition,
  amountsOf,
  bringDown,
  eachAddition,
} from './each-addition.ts';
import { type KnownPile, type Pile, knownPile } from './pile.ts';
import { say } from '../sentences.ts';
import { weighedAdditions, withTubesBeside } from './weighed-additions.ts';

export interface AdditionOptions {
  /** Most tubes to add, 1 to 3. @default 3 */
  readonly maxTubes?: number;
  /** Most grams to add. @default twenty times the pile */
  readonly maxGrams?: number;
  /** Grams of the right colour that are needed in the end. @default the pile's */
  readonly wantedGrams?: number;
  /** CIEDE2000 that is near enough to stop adding. @default 0.5 */
  readonly near?: number;
  readonly priority?: Priority;
  /** Given: additions are sought in whole steps of it, none under its smallest pour; so is the mix made afresh. */
  readonly scale?: Scale;
  readonly white?: WhiteName;
  readonly only?: readonly string[];
  readonly without?: readonly string[];
  readonly watch?: Watch;
}

/** Something to add. */
export interface Addition {
  /** Grams by tube id. Nothing is taken out. */
  readonly add: Masses;
  readonly grams: number;
  /** CIEDE2000 of the corrected pile from the wanted colour. */
  readonly deltaE00: number;
  readonly split: ColourSplit;
}

export interface AdditionResult {
  readonly pile: KnownPile;
  /** The pile as it is against the wanted colour. */
  readonly now: ColourSplit;
  /** Least paint first; each one that takes more comes nearer. */
  readonly additions: readonly Addition[];
  /** The pile is within `near` already: what could be added is listed, and none of it is advised. */
  readonly nearEnough: boolean;
  /** The least paint that comes near enough, else the nearest. Absent when nothing helps or nothing need be added. */
  readonly advised?: Addition;
  readonly afresh: Afresh;
  readonly sentence: string;
}

const NEAR = 0.5;
const MOST_TIMES_THE_PILE = 20;
/** One addition must beat the next smaller one by this to be worth listing, CIEDE2000. */
const WORTH = 0.05;
/** Families of tubes sought in a scale's steps besides those that count exactly. */
const FAMILIES_WEIGHED = 8;
/** Price of a pile's worth of paint when an addition is looked at a second time, in squared CIEDE2000. */
const SECOND_PRICE = 0.01;

/**
 * What to add to a pile already mixed so that it comes to a wanted colour: least paint first, nothing taken out, and
 * whether starting afresh wastes less.
 * @throws MixProblem for a pile of which nothing is known, an impossible colour, unknown tubes.
 * @throws MixingStopped
 */
export function addToPile(
  palette: MixingPalette,
  pile: Pile,
  target: Wanted,
  options: AdditionOptions = {},
): AdditionResult {
  const { maxTubes = 3, near = NEAR, only, without, watch, priority } = options;
  if (!(Number.isInteger(maxTubes) && maxTubes >= 1 && maxTubes <= 3)) {
    throw new MixProblem(say('tubes-at-once', { count: maxTubes }));
  }
  const white = whiteOfWanted(target, options.white ?? DEFAULT_WHITE);
  const known = knownPile(palette, pile, white);
  const wanted = wantedColour(target, priority, white);
  const choice = { white, ...(only ? { only } : {}), ...(without ? { without } : {}) };
  const all = tubeSet(palette, { white });
  const { masses, absorption, shift = { L: 0, a: 0, b: 0 } } = known;
  const set = withBlends(all, [{ id: 'the pile', masses, ...(absorption ? { absorption } : {}) }]);
  const problem: AdditionProblem = {
    search: searchOn(set),
    pile: set.ids.length - 1,
    pileGrams: known.grams,
    tubes: tubeSet(palette, choice).ids.map((id) => all.ids.indexOf(id)),
    most: maxTubes,
  };
  // What the pile reads beyond its masses is taken to stay with it: the aim moves the other way.
  const { L, a, b, ...rest } = wanted.channels;
  const aim = { ...rest, L: L - shift.L, a: a - shift.a, b: b - shift.b };
  const splitOf = (u: Float64Array): ColourSplit =>
    splitDifference(wanted.lab, { L: u[0]! + shift.L, a: u[1]! + shift.a, b: u[2]! + shift.b, white });
  problem.search.kernel.choose([problem.pile]);
  problem.search.kernel.colour(Float64Array.of(1));
  const now = splitOf(problem.search.kernel.u);
  const maxGrams = options.maxGrams ?? MOST_TIMES_THE_PILE * known.grams;
  const spelt = (rough: readonly RoughAddition[]): { rough: RoughAddition; deltaE00: number }[] =>
    rough.filter((r) => r.total <= maxGrams).map((r) => ({ rough: r, deltaE00: splitOf(r.u).deltaE00 }));
  const every = spelt(eachAddition(problem, quadraticGoal(aim, wanted.emphasis), watch));
  const first = front(every, now.deltaE00);
  // The smooth goal is only near CIEDE2000 where much is left over: look again with CIEDE2000 itself.
  const goal = differenceGoal(aim, wanted.emphasis);
  const second = first.flatMap(
    ({ rough }) => bringDown(problem, rough.tubes, goal, amountsOf(problem, rough), SECOND_PRICE) ?? [],
  );
  const exact = front([...first, ...spelt(second)], now.deltaE00);
  const { scale } = options;
  const chosen = scale
    ? front(
        spelt(
          weighedAdditions(
            problem,
            toWeigh(problem, exact, every, Object.entries(masses)),
            goal,
            scale,
            maxGrams,
          ),
        ),
        now.deltaE00,
      )
    : exact;
  const additions = chosen.map(({ rough }): Addition => {
    const split = splitOf(rough.u);
    return { add: gramsById(rough, set.ids), grams: rough.total, deltaE00: split.deltaE00, split };
  });
  const nearEnough = now.deltaE00 <= near;
  const advised = nearEnough
    ? undefined
    : (additions.find((one) => one.deltaE00 <= near) ?? additions.at(-1));
  const afresh = mixAfresh(
    palette,
    target,
    options.wantedGrams ?? known.grams,
    {
      ...choice,
      ...(priority ? { priority } : {}),
      ...(watch ? { watch } : {}),
      ...(scale ? { scale } : {}),
    },
    advised,
  );
  return {
    pile: known,
    now,
    additions,
    nearEnough,
    ...(advised ? { advised } : {}),
    afresh,
    sentence: additionSentence(palette, {
      known,
      now,
      advised,
      near,
      nearEnough,
      startAfresh: afresh.wastesLess,
      ...(scale ? { scale } : {}),
      ...(exact[0] ? { exact: gramsById(exact[0].rough, set.ids) } : {}),
    }),
  };
}

function gramsById({ tubes, grams }: RoughAddition, ids: readonly string[]): Masses {
  return Object.fromEntries(tubes.map((t, j) => [ids[t]!, grams[j]!]));
}

/**
 * What is sought in steps: the exact additions that count, and all of the families that come nearest; and those that
 * count once more, with the pile's own tubes beside them, the largest first.
 */
function toWeigh(
  problem: AdditionProblem,
  exact: readonly { readonly rough: RoughAddition }[],
  every: readonly { readonly rough: RoughAddition; readonly deltaE00: number }[],
  pile: readonly (readonly [string, number])[],
): Parameters<typeof weighedAdditions>[1] {
  const nearest = every.toSorted((p, q) => p.deltaE00 - q.deltaE00);
  const families = [...new Set(nearest.map(({ rough }) => rough.tubes.join()))].slice(0, FAMILIES_WEIGHED);
  const { ids } = problem.search.set;
  const beside = pile
    .toSorted((p, q) => q[1] - p[1])
    .map(([id]) => ids.indexOf(id))
    .filter((t) => problem.tubes.includes(t));
  return {
    near: [
      ...exact.map(({ rough }) => rough),
      ...nearest.filter(({ rough }) => families.includes(rough.tubes.join())).map(({ rough }) => rough),
    ],
    far: exact.flatMap(({ rough }) => withTubesBeside(rough, beside, problem.most)),
  };
}

/** Those no other beats in both paint and nearness, least paint first. */
function front<T extends { rough: RoughAddition; deltaE00: number }>(found: readonly T[], now: number): T[] {
  const out: T[] = [];
  let least = now;
  for (const one of found.toSorted((p, q) => p.rough.total - q.rough.total || p.deltaE00 - q.deltaE00)) {
    if (one.rough.total === 0 || one.deltaE00 > least - WORTH) continue;
    least = one.deltaE00;
    out.push(one);
  }
  return out;
}
