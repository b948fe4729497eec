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
/** Steps of distance below which fewer tubes win over nearer, CIEDE2000. */
const NEAR_STEP = 0.5;

function reaches(search: Search, c: Candidate, target: WantedChannels): boolean {
  search.kernel.choose(c.tubes);
  search.kernel.colour(c.parts);
  return (VALUE_HELD.value * (search.kernel.u[3]! - target.valueL!)) ** 2 < MISSED;
}

/** The best family of at most `most` tubes along the targets, each with `valueL` to hold. @throws MixingStopped */
export function familyAlong(
  search: Search,
  targets: readonly WantedChannels[],
  most: number,
  watch?: Watch,
): FamilyStep[] {
  const goals = targets.map((t) => ({
    goal: differenceGoal(t, VALUE_HELD),
    smooth: quadraticGoal(t, VALUE_HELD),
  }));
  const perStep = targets.map((t, i) => {
    heed(watch, i, 2 * targets.length);
    return candidates(search, t, VALUE_HELD, most).filter((c) => reaches(search, c, t));
  });
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
      const ok = of ?? (found && reaches(search, found, t) ? found : undefined);
      steps.push(ok);
      if (ok?.tubes.length === tubes.length) start = ok.parts;
      if (ok) {
        const off = distance(search, goals[i]!.goal, ok);
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
  /** In steps of NEAR_STEP. */
  readonly worst: number;
  readonly sum: number;
}

const bucket = (worst: number): number => Math.floor(worst / NEAR_STEP);

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
