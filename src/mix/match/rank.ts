import type { Candidate } from '../search/come-down.ts';

/** Everything ranking looks at. */
export interface Rankable {
  /** Ids of its tubes, ascending. */
  readonly ids: readonly string[];
  /** By how much what is held is missed: value, L* units. 0 where nothing is held. */
  readonly heldError: number;
  readonly deltaE00: number;
  /** Worst metamerism index; 0 where none can be said. */
  readonly metamerism: number;
  /** CIEDE2000 of the worst slip. */
  readonly slip: number;
  /** Price of the paint. */
  readonly price: number;
  /** CIEDE2000 by which the mix moves when its least needed tube is left out. */
  readonly leastNeeded: number;
}

/** A candidate of a search, to be ranked. */
export interface Ranked extends Rankable {
  readonly candidate: Candidate;
  /** Whose the worst slip is. */
  readonly worstTube: string;
}

/** Steps below which two recipes count as equal in one respect, CIEDE2000 but for `held` (L*). */
export const RANK_STEPS = { held: 0.05, metamerism: 0.05, slip: 0.1 } as const;

/**
 * Order of recipes: what is held, then CIEDE2000 in steps of `tie`, then fewest tubes, then metamerism (where the target
 * is a spectrum), then forgiveness, then the price of paint, then CIEDE2000 to the last digit. Steps are counted from
 * the best, so that the order is one order.
 */
export function rank<T extends Rankable>(all: readonly T[], tie: number): T[] {
  const leastHeld = Math.min(...all.map((r) => r.heldError));
  const held = (r: T): number => Math.floor((r.heldError - leastHeld) / RANK_STEPS.held);
  const keepers = all.filter((r) => held(r) === 0);
  const least = Math.min(...keepers.map((r) => r.deltaE00));
  const step = (v: number, by: number): number => Math.floor(v / by);
  const near = (r: T): number => (r.deltaE00 - least < tie ? 0 : 1 + step(r.deltaE00 - least - tie, tie));
  return all.toSorted(
    (p, q) =>
      held(p) - held(q) ||
      near(p) - near(q) ||
      p.ids.length - q.ids.length ||
      step(p.metamerism, RANK_STEPS.metamerism) - step(q.metamerism, RANK_STEPS.metamerism) ||
      step(p.slip, RANK_STEPS.slip) - step(q.slip, RANK_STEPS.slip) ||
      p.price - q.price ||
      p.deltaE00 - q.deltaE00 ||
      (p.ids.join() < q.ids.join() ? -1 : 1),
  );
}

/**
 * Leaves out recipes in disguise: those with a tube that does nothing (leaving it out moves the mix by less than `tie`),
 * and those that only add tubes to a better-ranked one without coming nearer. Where all have such a tube the best stays.
 */
export function withoutDisguises<T extends Rankable>(ranked: readonly T[], tie: number): T[] {
  const kept: T[] = [];
  for (const r of ranked) {
    if (r.ids.length > 1 && r.leastNeeded < tie) continue;
    const disguised = kept.some(
      (k) =>
        k.ids.length < r.ids.length &&
        k.ids.every((id) => r.ids.includes(id)) &&
        r.deltaE00 > k.deltaE00 - tie,
    );
    if (!disguised) kept.push(r);
  }
  return kept.length > 0 ? kept : ranked.slice(0, 1);
}
