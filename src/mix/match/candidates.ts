/**
 * The search itself: every family of one to `most` tubes that comes near the wanted colour in the net is brought down
 * to its best mix; those out of reach are brought down again by CIEDE2000 itself; and the best are asked whether one
 * more tube would help (the first-order condition), which also reaches families the net does not hold.
 */
import { type MixKernel, mixKernel } from '../kernel.ts';
import { type Watch, heed } from '../problem.ts';
import { type ColourProblem, colourProblem } from '../search/colour-problem.ts';
import { type Descent, descent } from '../search/descent.ts';
import {
  type Emphasis,
  type Goal,
  type WantedChannels,
  differenceGoal,
  quadraticGoal,
} from '../search/goal.ts';
import { mixNet } from '../search/net.ts';
import type { TubeSet } from '../tube-set.ts';

/** A mix the search came down to. */
export interface Candidate {
  /** Indices into the set, ascending. */
  readonly tubes: readonly number[];
  /** Effective parts, summing to 1, none of them 0. */
  readonly parts: Float64Array;
  /** Cost of the goal: squared CIEDE2000 where nothing is held. */
  readonly cost: number;
}

/**
 * Families whose nearest knot is farther than this (in units of the goal, about CIEDE2000) beyond the nearest of all
 * are left out. In trials on twelve invented tubes no exact recipe's nearest knot was farther than 17.
 */
const NEAR = 18;
/** What is held weighs at most this much when knots are judged. */
const SOFTLY = 2;
/** With more tubes than this the net holds threes, and fours grow from the best of them. */
const MOST_FOR_FOURS = 16;
/** Candidates brought down a second time, and asked for one more tube. */
const SECOND_LOOK = 40;
/** The same where some mix reaches the colour, so that the others are only also-rans. */
const SECOND_LOOK_WHERE_REACHED = 12;
const GROWN_FROM = 12;
const GROWN_FROM_THREES = 60;
/**
 * Farther than this from every mix, the quadratic goal no longer says which mix is nearest: knots are judged by
 * CIEDE2000 itself, and this many families are brought down by it from there.
 */
const FAR = 2;
const FAR_LOOK = 30;
/** Cost under which a colour counts as reached: CIEDE2000 0.001. */
const EXACT = 1e-6;

export interface Search {
  readonly set: TubeSet;
  readonly kernel: MixKernel;
  readonly problem: ColourProblem;
  readonly descent: Descent;
}

/** Scratch for searches over one set. */
export function searchOn(set: TubeSet): Search {
  const kernel = mixKernel(set);
  const most = Math.max(4, set.ids.length);
  return { set, kernel, problem: colourProblem(kernel, most), descent: descent(most) };
}

/** Drops the tubes that a descent left at nothing. */
function withoutZeros(tubes: readonly number[], x: Float64Array, cost: number): Candidate {
  if (x.every((part) => part > 1e-9)) return { tubes, parts: x, cost };
  const kept = tubes.map((tube, j) => ({ tube, part: x[j]! })).filter(({ part }) => part > 1e-9);
  return { tubes: kept.map((k) => k.tube), parts: Float64Array.from(kept, (k) => k.part), cost };
}

function keyOf(tubes: readonly number[]): string {
  return tubes.join(' ');
}

/** Brings a family down to a goal from a start; undefined where an interior search met its edge. */
export function comeDown(
  search: Search,
  goal: Goal,
  tubes: readonly number[],
  start: Float64Array,
  interior: boolean,
): Candidate | undefined {
  const x = start.slice();
  search.kernel.choose(tubes);
  search.problem.aim(goal, tubes.length);
  const cost = search.descent.solve(search.problem, x, tubes.length, { interior, reached: EXACT / 100 });
  return cost === Infinity ? undefined : withoutZeros(tubes, x, cost);
}

/** Best mix of each family in the net near the colour. */
function firstLook(
  search: Search,
  target: WantedChannels,
  emphasis: Emphasis,
  most: number,
  watch?: Watch,
): Candidate[] {
  const goal = quadraticGoal(target, emphasis);
  // What is held weighs thousandfold and would make every knot look far: nearness is judged with less of it.
  const soft = quadraticGoal(target, {
    lightness: Math.min(emphasis.lightness, SOFTLY),
    chroma: emphasis.chroma,
    hue: Math.min(emphasis.hue, SOFTLY),
    value: Math.min(emphasis.value, SOFTLY),
  });
  const net = mixNet(search.set, search.set.ids.length > MOST_FOR_FOURS ? Math.min(most, 3) : most, watch);
  const { colours, families } = net;
  const u = new Float64Array(4);
  const nearest = new Float64Array(families.length);
  const knots = new Int32Array(families.length);
  let least = Infinity;
  families.forEach((family, i) => {
    let best = Infinity;
    for (let k = 0, p = 4 * family.first; k < family.count; k++, p += 4) {
      u[0] = colours[p]!;
      u[1] = colours[p + 1]!;
      u[2] = colours[p + 2]!;
      u[3] = colours[p + 3]!;
      const cost = soft.cost(u);
      if (cost < best) {
        best = cost;
        knots[i] = k;
      }
    }
    nearest[i] = best;
    if (best < least) least = best;
  });
  const limit = (Math.sqrt(least) + NEAR) ** 2;
  const x = new Float64Array(4);
  const found: Candidate[] = [];
  families.forEach((family, i) => {
    if (i % 32 === 0) heed(watch, i, families.length);
    if (nearest[i]! > limit) return;
    net.partsOf(family, knots[i]!, x);
    if (family.tubes.length === 1) {
      u.set(colours.subarray(4 * family.first, 4 * family.first + 4));
      found.push({ tubes: family.tubes, parts: Float64Array.of(1), cost: goal.cost(u) });
      return;
    }
    const candidate = comeDown(search, goal, family.tubes, x.subarray(0, family.tubes.length), true);
    if (candidate?.tubes.length === family.tubes.length) found.push(candidate);
  });
  return found;
}

/** Best mixes of the families whose knots are nearest by the goal itself. */
function farLook(search: Search, goal: Goal, most: number): Candidate[] {
  const net = mixNet(search.set, search.set.ids.length > MOST_FOR_FOURS ? Math.min(most, 3) : most);
  const u = new Float64Array(4);
  const near = net.families.map((family) => {
    let cost = Infinity;
    let knot = 0;
    for (let k = 0; k < family.count; k++) {
      const p = 4 * (family.first + k);
      for (let c = 0; c < 4; c++) u[c] = net.colours[p + c]!;
      const at = goal.cost(u);
      if (at < cost) {
        cost = at;
        knot = k;
      }
    }
    return { family, knot, cost };
  });
  const x = new Float64Array(4);
  return near
    .toSorted((a, b) => a.cost - b.cost || a.family.first - b.family.first)
    .slice(0, FAR_LOOK)
    .flatMap(({ family, knot }) => {
      net.partsOf(family, knot, x);
      return comeDown(search, goal, family.tubes, x.subarray(0, family.tubes.length), false) ?? [];
    });
}

/** Whether one more tube, any of the set, would make a candidate better; and how much better it then is. */
function grow(search: Search, goal: Goal, from: Candidate, seen: Set<string>): Candidate[] {
  const n = search.set.ids.length;
  const everything = Array.from({ length: n }, (_, i) => i);
  const x = new Float64Array(n);
  from.tubes.forEach((tube, j) => (x[tube] = from.parts[j]!));
  const slope = new Float64Array(n);
  search.kernel.choose(everything);
  search.problem.aim(goal, n);
  search.problem.model(x, slope, new Float64Array(n * n));
  const out: Candidate[] = [];
  for (const tube of everything) {
    if (from.tubes.includes(tube) || slope[tube]! >= 0) continue;
    const tubes = [...from.tubes, tube].toSorted((a, b) => a - b);
    if (seen.has(keyOf(tubes))) continue;
    seen.add(keyOf(tubes));
    const start = Float64Array.from(tubes, (t) => x[t]!);
    start[tubes.indexOf(tube)] = 1e-3;
    const better = comeDown(search, goal, tubes, start, false);
    if (better && better.cost < from.cost) out.push(better);
  }
  return out;
}

/**
 * Mixes near a wanted colour, nearest first, one a family of tubes, at most `most` tubes each.
 * @throws MixingStopped
 */
export function candidates(
  search: Search,
  target: WantedChannels,
  emphasis: Emphasis,
  most: number,
  watch?: Watch,
): Candidate[] {
  const goal = differenceGoal(target, emphasis);
  const byCost = (a: Candidate, b: Candidate): number =>
    a.cost - b.cost || (keyOf(a.tubes) < keyOf(b.tubes) ? -1 : 1);
  const first = firstLook(search, target, emphasis, most, watch).toSorted(byCost);
  const found = new Map<string, Candidate>();
  const keep = (c: Candidate): void => {
    const known = found.get(keyOf(c.tubes));
    if (!known || c.cost < known.cost) found.set(keyOf(c.tubes), c);
  };
  let looked = 0;
  const looks = first[0] && first[0].cost < EXACT ? SECOND_LOOK_WHERE_REACHED : SECOND_LOOK;
  for (const candidate of first) {
    if (candidate.cost < EXACT) keep(candidate);
    else if (looked < looks) {
      looked++;
      const better = comeDown(search, goal, candidate.tubes, candidate.parts, false);
      if (better) keep(better);
    }
  }
  if (!(Math.min(...[...found.values()].map((c) => c.cost)) < FAR * FAR))
    farLook(search, goal, most).forEach(keep);
  const reached = [...found.values()].some((c) => c.cost < EXACT);
  const seen = new Set(first.map((c) => keyOf(c.tubes)));
  const threesOnly = search.set.ids.length > MOST_FOR_FOURS && most > 3;
  if (!reached || threesOnly) {
    for (let round = 0; round < most; round++) {
      const best = [...found.values()]
        .toSorted(byCost)
        .slice(0, threesOnly && round === 0 ? GROWN_FROM_THREES : GROWN_FROM);
      const grown = best
        .filter((c) => c.tubes.length < most && c.cost >= EXACT)
        .flatMap((c, i) => {
          heed(watch, i, best.length);
          return grow(search, goal, c, seen);
        });
      if (grown.length === 0) break;
      grown.forEach(keep);
    }
  }
  return [...found.values()].toSorted(byCost);
}
