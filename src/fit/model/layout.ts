/**
 * Where each unknown stands. The white and what all tubes share (surface, crowding, common thickness) come first, the
 * border; then one block per tube, or per tubes that were mixed with each other. Blocks touch each other only through
 * the border, so that the cost of a step grows with the number of tubes and no faster.
 */
import type { Piles } from '../../calibrate/swatch-set/piles.ts';
import { GRID_SIZE } from '../../colour/grid.ts';

/** Unknowns shared by all tubes, by name; each has one place in the border where it is fitted. */
export const SHARED_UNKNOWNS = ['k2', 'floor', 'crowding', 'lnX', 'lnXPerMicrometre'] as const;
export type SharedUnknown = (typeof SHARED_UNKNOWNS)[number];

export interface Block {
  readonly offset: number;
  readonly size: number;
  readonly tubes: readonly number[];
}

export interface Layout {
  readonly size: number;
  /** Unknowns 0 up to this are the border. */
  readonly border: number;
  readonly blocks: readonly Block[];
  /** First of 36 places, or -1. */
  readonly lnK: readonly number[];
  readonly lnS: readonly number[];
  readonly errors: Int32Array;
  readonly films: Int32Array;
  readonly shared: Readonly<Partial<Record<SharedUnknown, number>>>;
  /** Block of each pile, -1 for piles of white alone without unknowns of their own. */
  readonly blockOfPile: Int32Array;
}

export interface LayoutNeeds {
  readonly piles: Piles;
  /** Piles that were read (checks are not). */
  readonly used: readonly number[];
  readonly white: number;
  readonly whiteScatters: boolean;
  readonly shared: readonly SharedUnknown[];
  /** Pile of each finite film. */
  readonly filmPiles: readonly number[];
  readonly tubeCount: number;
}

export function layoutOf(needs: LayoutNeeds): Layout {
  const { piles, used, white, tubeCount } = needs;
  const parent = Array.from({ length: tubeCount }, (_, t) => t);
  const root = (t: number): number => (parent[t] === t ? t : (parent[t] = root(parent[t]!)));
  for (const p of used) {
    const others = piles.piles[p]!.tubes.filter((t) => t !== white);
    others.forEach((t) => (parent[root(t)] = root(others[0]!)));
  }
  const lnK = Array.from({ length: tubeCount }, () => -1);
  const lnS = Array.from({ length: tubeCount }, () => -1);
  const errors = new Int32Array(piles.errorCount).fill(-1);
  const films = new Int32Array(needs.filmPiles.length).fill(-1);
  const shared: Partial<Record<SharedUnknown, number>> = {};
  let next = 0;
  const take = (count: number): number => (next += count) - count;
  lnK[white] = take(GRID_SIZE);
  if (needs.whiteScatters) lnS[white] = take(GRID_SIZE);
  for (const name of needs.shared) shared[name] = take(1);
  const border = next;

  const blockOfPile = new Int32Array(piles.piles.length).fill(-1);
  const blocks: Block[] = [];
  const measured = new Set(used.flatMap((p) => piles.piles[p]!.tubes));
  const roots = [...new Set([...measured].filter((t) => t !== white).map(root))];
  const add = (tubes: readonly number[], pilesHere: readonly number[]): void => {
    const offset = next;
    for (const t of tubes) {
      lnK[t] = take(GRID_SIZE);
      lnS[t] = take(GRID_SIZE);
    }
    for (const p of pilesHere) {
      blockOfPile[p] = blocks.length;
      for (const e of piles.piles[p]!.errors) if (errors[e]! < 0) errors[e] = take(1);
      needs.filmPiles.forEach((fp, f) => {
        if (fp === p && films[f]! < 0) films[f] = take(1);
      });
    }
    blocks.push({ offset, size: next - offset, tubes });
  };
  for (const r of roots) {
    const tubes = [...measured].filter((t) => t !== white && root(t) === r).toSorted((a, b) => a - b);
    add(
      tubes,
      used.filter((p) => piles.piles[p]!.tubes.some((t) => tubes.includes(t))),
    );
  }
  const whiteAlone = used.filter((p) => piles.piles[p]!.tubes.every((t) => t === white));
  if (whiteAlone.some((p) => needs.filmPiles.includes(p))) {
    add(
      [],
      whiteAlone.filter((p) => needs.filmPiles.includes(p)),
    );
  }
  return { size: next, border, blocks, lnK, lnS, errors, films, shared, blockOfPile };
}
