/**
 * The search itself: every family of one to `most` tubes that comes near the wanted colour in the net is brought down
 * to its best mix; those out of reach are brought down again by CIEDE2000 itself; and the best are asked whether one
 * more tube would help (the first-order condition), which also reaches families the net does not hold.
 */
import { type Watch, heed } from '../problem.ts';
import { type Candidate, EXACT, type Search, comeDown } from '../search/come-down.ts';
import { type Emphasis, type Goal, type WantedChannels, differenceGoal } from '../search/goal.ts';
import { firstLook, netFor, threesOnly } from './first-look.ts';

export { type Candidate, type Search, comeDown, searchOn } from '../search/come-down.ts';

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

function keyOf(tubes: readonly number[]): string {
  return tubes.join(' ');
}

/** Best mixes of the families whose knots are nearest by the goal itself. */
function farLook(search: Search, goal: Goal, most: number): Candidate[] {
  const net = netFor(search, most);
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
 * Mixes near a wanted colour, nearest first, one a family of tubes, at most `most` tubes each. Families that hold one
 * which comes nearer than `exactly` (a cost, EXACT at the most) are left out.
 * @throws MixingStopped
 */
export function candidates(
  search: Search,
  target: WantedChannels,
  emphasis: Emphasis,
  most: number,
  watch?: Watch,
  exactly = 0,
): Candidate[] {
  const goal = differenceGoal(target, emphasis);
  const byCost = (a: Candidate, b: Candidate): number =>
    a.cost - b.cost || (keyOf(a.tubes) < keyOf(b.tubes) ? -1 : 1);
  const first = firstLook(search, target, emphasis, most, exactly, watch).toSorted(byCost);
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
  const foursMissing = threesOnly(search, most);
  if (!reached || foursMissing) {
    for (let round = 0; round < most; round++) {
      const best = [...found.values()]
        .toSorted(byCost)
        .slice(0, foursMissing && round === 0 ? GROWN_FROM_THREES : GROWN_FROM);
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
