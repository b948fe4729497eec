/**
 * One family of tubes for a whole string of colours: a painter lays out one set of piles, not another for every step.
 */
import { candidates } from '../match/candidates.ts';
import { type Candidate, type Search, comeDown } from '../search/come-down.ts';
import { type Watch, heed } from '../problem.ts';
import {
  type Emphasis,
  type Goal,
  type WantedChannels,
  differenceGoal,
  quadraticGoal,
} from '../search/goal.ts';

/** The value is held; how far a* and b* are off decides. */
export const VALUE_HELD: Emphasis = { lightness: 0, chroma: 1, hue: 1, value: 100 };

/** Where the value gives way to the pull of a colour far off, as at the very ends, it is held harder. */
const VALUE_HELD_HARDER: Emphasis = { ...VALUE_HELD, value: 3000 };

export interface FamilyStep {
  /** Undefined where no mix has the value. */
  readonly candidate: Candidate | undefined;
  /** False where another family had to step in. */
  readonly ofFamily: boolean;
}

/** Families looked at for each step. */
const PER_STEP = 6;
/** Squared distance (CIEDE2000 units, value held) above which a step's value is not reached: value off by about 0.01. */
const MISSED = 1;
/** Differences of distance below which fewer tubes win over nearer, CIEDE2000, unless said otherwise. */
const NEAR = 0.5;

function reaches(search: Search, c: Candidate, target: WantedChannels): boolean {
  search.kernel.choose(c.tubes);
  search.kernel.colour(c.parts);
  return (VALUE_HELD.value * (search.kernel.u[3]! - target.valueL!)) ** 2 < MISSED;
}

/** The same tubes with the value held harder; undefined where they have no such value. */
function harder(search: Search, c: Candidate, target: WantedChannels): Candidate | undefined {
  const found = comeDown(search, quadraticGoal(target, VALUE_HELD_HARDER), c.tubes, c.parts, false);
  return found && reaches(search, found, target) ? found : undefined;
}

export interface AlongOptions {
  /** CIEDE2000 that fewer tubes are worth. */
  readonly near?: number;
  readonly watch?: Watch | undefined;
}

/** The best family of at most `most` tubes along the targets, each with `valueL` to hold. @throws MixingStopped */
export function familyAlong(
  search: Search,
  targets: readonly WantedChannels[],
  most: number,
  { near = NEAR, watch }: AlongOptions = {},
): FamilyStep[] {
  const bucket = (worst: number): number => Math.floor(worst / near);
  const goals = targets.map((t) => ({
    goal: differenceGoal(t, VALUE_HELD),
    smooth: quadraticGoal(t, VALUE_HELD),
  }));
  const perStep = targets.map((t, i) => {
    heed(watch, i, 2 * targets.length);
    const all = candidates(search, t, VALUE_HELD, most);
    const have = all.filter((c) => reaches(search, c, t));
    return have.length > 0 ? have : all.slice(0, PER_STEP).flatMap((c) => harder(search, c, t) ?? []);
  });
  // What no family comes nearer to is no family's fault: an end of the string must not decide for all of it.
  const nearest = perStep.map((list, i) =>
    Math.min(...list.map((c) => distance(search, goals[i]!.goal, c)), Infinity),
  );
  const families = new Map<string, readonly number[]>();
  for (const list of perStep) {
    for (const c of list.slice(0, PER_STEP)) families.set(c.tubes.join(' '), c.tubes);
    for (const c of list.filter((d) => d.tubes.length < most).slice(0, PER_STEP))
      families.set(c.tubes.join(' '), c.tubes);
  }
  // Those that came up at most steps first: the sooner a good one is known, the sooner others are given up.
  const known = perStep.map((list) => new Map(list.map((c) => [c.tubes.join(' '), c])));
  const seenAt = (tubes: readonly number[]): number =>
    known.filter((step) => step.has(tubes.join(' '))).length;
  const inOrder = [...families.values()]
    .map((tubes) => ({ tubes, seen: seenAt(tubes) }))
    .toSorted((p, q) => q.seen - p.seen || (p.tubes.join() < q.tubes.join() ? -1 : 1));
  let best: Rated | undefined;
  inOrder.forEach(({ tubes }, f) => {
    heed(watch, families.size + f, 2 * families.size);
    let start: Float64Array | undefined;
    const steps: (Candidate | undefined)[] = [];
    let missed = 0;
    let worst = 0;
    let sum = 0;
    for (const [i, t] of targets.entries()) {
      // What is missed, and the worst step, only grow: one that is behind in them already stays behind.
      if (best && (missed > best.missed || (missed === best.missed && bucket(worst) > best.worst))) return;
      const from = start ?? new Float64Array(tubes.length).fill(1 / tubes.length);
      const of = known[i]!.get(tubes.join(' '));
      const found = of ?? comeDown(search, goals[i]!.smooth, tubes, from, false);
      const ok = of ?? (found && (reaches(search, found, t) ? found : harder(search, found, t)));
      steps.push(ok);
      if (ok?.tubes.length === tubes.length) start = ok.parts;
      if (ok) {
        const off = Math.max(0, distance(search, goals[i]!.goal, ok) - nearest[i]!);
        worst = Math.max(worst, off);
        sum += off;
      } else missed++;
    }
    const rated = { tubes, steps, missed, worst: bucket(worst), sum };
    if (!best || order(rated, best) < 0) best = rated;
  });
  return targets.map((_, i) => {
    const own = best?.steps[i];
    const other = perStep[i]![0];
    // Where no mix has the value, none had to step in either.
    return own ? { candidate: own, ofFamily: true } : { candidate: other, ofFamily: other === undefined };
  });
}

interface Rated {
  readonly tubes: readonly number[];
  readonly steps: readonly (Candidate | undefined)[];
  readonly missed: number;
  /** How much nearer another family comes at the worst step, in steps of `near`. */
  readonly worst: number;
  readonly sum: number;
}

function order(p: Rated, q: Rated): number {
  return (
    p.missed - q.missed ||
    p.worst - q.worst ||
    p.tubes.length - q.tubes.length ||
    p.sum - q.sum ||
    (p.tubes.join() < q.tubes.join() ? -1 : 1)
  );
}

function distance(search: Search, goal: Goal, c: Candidate): number {
  search.kernel.choose(c.tubes);
  search.kernel.colour(c.parts);
  return Math.sqrt(goal.cost(search.kernel.u));
}
