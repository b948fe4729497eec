import { type Watch, heed } from '../problem.ts';
import { type Candidate, EXACT, type Search, comeDown, searchOn } from '../search/come-down.ts';
import { type Emphasis, type Goal, type WantedChannels, quadraticGoal } from '../search/goal.ts';
import { type MixNet, mixNet } from '../search/net.ts';

/**
 * Families whose nearest knot is farther than this (in units of the goal, about CIEDE2000) beyond the nearest of all
 * are left out. In trials on twelve invented tubes no exact recipe's nearest knot was farther than 17.
 */
const NEAR = 18;
/** What is held weighs at most this much when knots are judged. */
const SOFTLY = 2;
/** With more tubes than this the net holds threes, and fours grow from the best of them. */
const MOST_FOR_FOURS = 16;

/**
 * A tube makes a mix no better where the first of it takes the mix away by this much at least, in units of the goal's
 * root (about CIEDE2000) per effective part of the whole. Where it does so by less, more of it may turn out otherwise.
 */
const FIRMLY = 1;

/** With no more tubes than this, families are few enough to search every one. */
const FEW = 8;

/** Whether fours are searched through, or grown from threes. */
export function threesOnly(search: Search, most: number): boolean {
  return search.set.ids.length > MOST_FOR_FOURS && most > 3;
}

/** The net a colour is looked for in. @throws MixingStopped */
export function netFor(search: Search, most: number, watch?: Watch): MixNet {
  return mixNet(search.set, threesOnly(search, most) ? 3 : most, watch);
}

/** The nearest knot of each family, its cost, and the least cost of all. */
function nearestKnots(net: MixNet, goal: Goal): { cost: Float64Array; knot: Int32Array; least: number } {
  const { colours, families } = net;
  const u = new Float64Array(4);
  const cost = new Float64Array(families.length);
  const knot = new Int32Array(families.length);
  let least = Infinity;
  for (let f = 0; f < families.length; f++) {
    const family = families[f]!;
    let best = Infinity;
    for (let k = 0, p = 4 * family.first; k < family.count; k++, p += 4) {
      u[0] = colours[p]!;
      u[1] = colours[p + 1]!;
      u[2] = colours[p + 2]!;
      u[3] = colours[p + 3]!;
      const at = goal.cost(u);
      if (at < best) {
        best = at;
        knot[f] = k;
      }
    }
    cost[f] = best;
    if (best < least) least = best;
  }
  return { cost, knot, least };
}

/**
 * What is known of families searched already: their best mix is also that of a larger family if none of the tubes that
 * are more would make it better (the first-order condition), and the larger family need not be searched.
 */
function answered(search: Search, goal: Goal, soft: Goal, net: MixNet, exactly: number) {
  const n = search.set.ids.length;
  const wide = searchOn(search.set);
  wide.kernel.choose(Array.from({ length: n }, (_, i) => i));
  wide.problem.aim(goal, n);
  const x = new Float64Array(n);
  const slope = new Float64Array(n);
  const curvature = new Float64Array(n * n);
  /** By family: 1 for tubes that do not make its best mix better. */
  const idle = new Uint8Array(net.families.length * n);
  /** By family: what its best mix costs by the goal that knots are judged by; 0 where there is none. */
  const softCost = new Float64Array(net.families.length);
  return {
    note(family: number, { tubes, parts, cost }: Candidate): void {
      const at = n * family;
      softCost[family] = -1;
      if (cost < exactly) {
        idle.fill(1, at, at + n);
        return;
      }
      // So near, slopes are rounding; and a small palette is searched through.
      if (cost < EXACT || n <= FEW) return;
      x.fill(0);
      for (let j = 0; j < tubes.length; j++) x[tubes[j]!] = parts[j]!;
      wide.problem.model(x, slope, curvature);
      softCost[family] = soft.cost(wide.kernel.u);
      const firmly = 2 * FIRMLY * Math.sqrt(cost);
      for (let t = 0; t < n; t++) idle[at + t] = slope[t]! > firmly ? 1 : 0;
      for (const t of tubes) idle[at + t] = 1;
    },
    /** `nearestKnot`: soft cost of the nearest knot; a family that has a better one is not answered by a smaller. */
    by(family: number, nearestKnot: number): boolean {
      const { tubes, within } = net.families[family]!;
      for (const smaller of within) {
        if (softCost[smaller] === 0 || (softCost[smaller]! > 0 && nearestKnot < softCost[smaller]!)) continue;
        let all = 1;
        for (const t of tubes) all &= idle[n * smaller + t]!;
        if (all === 1) return true;
      }
      return false;
    },
  };
}

/**
 * Best mix of each family in the net near the colour, by the quadratic form CIEDE2000 has there. Families whose best
 * mix is that of a smaller one are left out, and so are those holding one that comes nearer than `exactly` (a cost).
 * @throws MixingStopped
 */
export function firstLook(
  search: Search,
  target: WantedChannels,
  emphasis: Emphasis,
  most: number,
  exactly: number,
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
  const net = netFor(search, most, watch);
  const { families, colours } = net;
  const nearest = nearestKnots(net, soft);
  const limit = (Math.sqrt(nearest.least) + NEAR) ** 2;
  const known = answered(search, goal, soft, net, exactly);
  const starts = [1, 2, 3, 4].map((m) => new Float64Array(m));
  const found: Candidate[] = [];
  families.forEach((family, i) => {
    if (i % 32 === 0) heed(watch, i, families.length);
    if (nearest.cost[i]! > limit || known.by(i, nearest.cost[i]!)) return;
    const m = family.tubes.length;
    const x = starts[m - 1]!;
    net.partsOf(family, nearest.knot[i]!, x);
    const candidate =
      m === 1
        ? {
            tubes: family.tubes,
            parts: Float64Array.of(1),
            cost: goal.cost(colours.subarray(4 * family.first, 4 * family.first + 4)),
          }
        : comeDown(search, goal, family.tubes, x, true);
    if (candidate?.tubes.length !== m) return;
    found.push(candidate);
    known.note(i, candidate);
  });
  return found;
}
