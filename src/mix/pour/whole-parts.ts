import type { WhiteName } from '../../colour/illuminant.ts';
import { type MixingPalette, labelOf } from '../../fit/palette.ts';
import type { Masses } from '../film-stack.ts';
import { searchOn } from '../search/come-down.ts';
import { type Priority, type Wanted, wantedColour, whiteOfWanted } from '../match/wanted.ts';
import { MixProblem } from '../problem.ts';
import { differenceGoal } from '../search/goal.ts';
import { effectiveParts, tubeSet } from '../tube-set.ts';
import { say } from '../sentences.ts';

export interface PartsOptions {
  /** Most parts in all. @default 20 */
  readonly mostParts?: number;
  /** @default 'mass' */
  readonly basis?: 'mass' | 'volume';
  /** g/ml by tube id; needed for volume. */
  readonly densities?: Masses;
  readonly priority?: Priority;
  readonly white?: WhiteName;
}

/** Small whole numbers to mix by. */
export interface WholeParts {
  readonly parts: Masses;
  readonly total: number;
  readonly basis: 'mass' | 'volume';
  /** CIEDE2000 from the wanted colour. */
  readonly deltaE00: number;
}

/** Most sharings that are looked through one by one, and most parts a painter counts. */
const MOST_SHARINGS = 200_000;
const MOST_PARTS = 60;
/** A larger total must come nearer than this share of the next smaller one's difference to be worth counting out. */
const WORTH_COUNTING = 0.85;

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

/** Ways to share up to `most` parts among m tubes: (most + m) over m. */
function sharings(m: number, most: number): number {
  let ways = 1;
  for (let j = 1; j <= m; j++) ways = (ways * (most + j)) / j;
  return ways;
}

/** Most parts that can be looked through one by one for so many tubes, up to what a painter counts. */
export function mostPartsOf(tubes: number): number {
  let most = MOST_PARTS;
  while (most > 1 && sharings(tubes, most) > MOST_SHARINGS) most--;
  return most;
}

/** Calls `visit` with every way to share up to `most` whole parts among m tubes; a tube may get none. */
function everySharing(m: number, most: number, visit: (parts: number[]) => void): void {
  const parts = Array.from({ length: m }, () => 0);
  const go = (j: number, left: number): void => {
    if (j === m) {
      if (parts.reduce(gcd, 0) === 1) visit(parts);
      return;
    }
    for (let k = 0; k <= left; k++) {
      parts[j] = k;
      go(j + 1, left - k);
    }
    parts[j] = 0;
  };
  go(0, most);
}

/**
 * The tubes of a recipe in small whole parts, every sharing tried: fewest parts first, each longer one nearer the
 * colour than the one before. Rounding exact shares instead costs several CIEDE2000, because strong tubes round to none.
 * @throws MixProblem for volume without densities, or more tubes or parts than can be counted out.
 */
export function wholeParts(
  palette: MixingPalette,
  target: Wanted,
  masses: Masses,
  options: PartsOptions = {},
): WholeParts[] {
  const { mostParts = 20, basis = 'mass' } = options;
  if (!(Number.isInteger(mostParts) && mostParts >= 1 && mostParts <= MOST_PARTS)) {
    throw new MixProblem(say('parts', { parts: mostParts, most: MOST_PARTS }));
  }
  const wanted = wantedColour(target, options.priority, options.white);
  const set = tubeSet(palette, { white: whiteOfWanted(target, options.white) });
  const x = effectiveParts(set, masses);
  const tubes = [...x.keys()].filter((i) => x[i]! > 0);
  if (sharings(tubes.length, mostParts) > MOST_SHARINGS) {
    throw new MixProblem(say('too-many-parts', { parts: mostParts, tubes: tubes.length }));
  }
  const perPart = tubes.map((t) => {
    const id = set.ids[t]!;
    const density = basis === 'volume' ? options.densities?.[id] : 1;
    if (!(density !== undefined && density > 0)) {
      throw new MixProblem(say('density', { id: labelOf(palette, id) }));
    }
    return density * set.strength[t]!;
  });
  const { kernel } = searchOn(set);
  const goal = differenceGoal(wanted.channels, wanted.emphasis);
  kernel.choose(tubes);
  const y = new Float64Array(tubes.length);
  const bestOf = new Map<number, { parts: number[]; cost: number }>();
  everySharing(tubes.length, mostParts, (parts) => {
    let total = 0;
    parts.forEach((k, j) => {
      y[j] = k * perPart[j]!;
      total += k;
    });
    kernel.colour(y);
    const cost = goal.cost(kernel.u);
    const known = bestOf.get(total);
    if (!known || cost < known.cost) bestOf.set(total, { parts: [...parts], cost });
  });
  const even = differenceGoal(wanted.channels);
  const out: WholeParts[] = [];
  let least = Infinity;
  for (const [total, { parts, cost }] of [...bestOf].toSorted(([a], [b]) => a - b)) {
    if (!(Math.sqrt(cost) < WORTH_COUNTING * least)) continue;
    least = Math.sqrt(cost);
    parts.forEach((k, j) => (y[j] = k * perPart[j]!));
    kernel.colour(y);
    out.push({
      parts: Object.fromEntries(tubes.flatMap((t, j) => (parts[j]! > 0 ? [[set.ids[t]!, parts[j]!]] : []))),
      total,
      basis,
      deltaE00: Math.sqrt(even.cost(kernel.u)),
    });
  }
  return out;
}
