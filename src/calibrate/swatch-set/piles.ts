/**
 * How each pile of paint was weighed, and how the errors of weighing run through it. A pile made from another pile
 * (serial dilution) inherits its errors, which is where the covariance between rungs comes from.
 *
 * Every independent error e is standard normal. A part's mass is grams * exp(sd * e). Two parts weighed together have
 * one error, that of their ratio; three or more have one each.
 */
import { SwatchSetProblem } from './problem.ts';
import type { Check, Swatch, SwatchSet, Weighing } from './schema.ts';
import { say } from './sentences.ts';

/** What a part of a pile is: a tube (index in `tubeIds`) or another pile (index in `piles`). */
export type PartSource = { readonly tube: number } | { readonly pile: number };

export interface PilePart {
  readonly source: PartSource;
  readonly grams: number;
  /** Index of its weighing error, or -1 where it carries none. */
  readonly error: number;
  /** Standard deviation of ln mass per unit of that error. */
  readonly sd: number;
}

export interface Pile {
  /** Id of the first swatch painted from it. */
  readonly id: string;
  readonly parts: readonly PilePart[];
  /** Tubes in it, ascending index in `tubeIds`. */
  readonly tubes: readonly number[];
  /** Weighing errors that reach it. */
  readonly errors: readonly number[];
}

export interface Piles {
  readonly tubeIds: readonly string[];
  readonly piles: readonly Pile[];
  /** Index of the pile each swatch or check was painted from. */
  readonly pileOf: ReadonlyMap<string, number>;
  /** How many independent weighing errors there are. */
  readonly errorCount: number;
}

/** Relative error of a weighed ratio taken where the document says nothing. Common practice, no source. */
export const ASSUMED_WEIGHING: Weighing = { relativeSigma: 0.02 };

/**
 * Two readings of a scale (tare and load), each rounded evenly over one step d: variance 2 d^2/12.
 */
export function weighingErrorOfResolution(resolution: number): number {
  return resolution / Math.sqrt(6);
}

/** Standard deviation of ln mass of one part of `grams`. */
function partSd(weighing: Weighing, grams: number): number {
  return 'resolution' in weighing
    ? weighingErrorOfResolution(weighing.resolution) / grams
    : weighing.relativeSigma / Math.SQRT2;
}

/**
 * The piles of a swatch set. Swatches of one drawdown are one pile.
 * @throws SwatchSetProblem for unknown tubes or swatches, circles, both or neither of `masses` and `made`, no paint.
 */
export function pilesOf(
  set: Pick<SwatchSet, 'tubes' | 'swatches' | 'checks' | 'weighing'>,
  weighing: Weighing = set.weighing ?? ASSUMED_WEIGHING,
): Piles {
  const tubeIds = set.tubes.map((t) => t.id);
  const items = new Map<string, Swatch | Check>([...set.swatches, ...set.checks].map((s) => [s.id, s]));
  const piles: Pile[] = [];
  const pileOf = new Map<string, number>();
  const byDrawdown = new Map<string, number>();
  const underway = new Set<string>();
  let errorCount = 0;

  const tubeIndex = (id: string, by: string): number => {
    const index = tubeIds.indexOf(id);
    if (index >= 0) return index;
    throw new SwatchSetProblem(say('unknown-tube', { by, id, known: tubeIds.join(', ') }), 'swatches');
  };

  const build = (id: string, by: string): number => {
    const known = pileOf.get(id);
    if (known !== undefined) return known;
    const item = items.get(id);
    if (!item) {
      throw new SwatchSetProblem(say('unknown-swatch', { by, id }), 'swatches');
    }
    const drawdown = item.film === 'opaque' ? undefined : item.film.drawdown;
    const shared = drawdown === undefined ? undefined : byDrawdown.get(drawdown);
    if (shared !== undefined) {
      pileOf.set(id, shared);
      return shared;
    }
    if (underway.has(id)) {
      throw new SwatchSetProblem(say('made-from-itself', { id, by }), 'swatches');
    }
    underway.add(id);
    const sources = sourcesOf(item, tubeIndex, (from) => build(from, id));
    const own: PilePart[] = [];
    if (sources.length === 2) {
      const [a, b] = sources as [Source, Source];
      const small = a.grams <= b.grams ? 0 : 1;
      const sd = Math.hypot(partSd(weighing, a.grams), partSd(weighing, b.grams));
      sources.forEach((s, i) =>
        own.push({ ...s, error: i === small && sd > 0 ? errorCount : -1, sd: i === small ? sd : 0 }),
      );
      if (sd > 0) errorCount++;
    } else if (sources.length > 2) {
      for (const s of sources) {
        const sd = partSd(weighing, s.grams);
        own.push({ ...s, error: sd > 0 ? errorCount++ : -1, sd });
      }
    } else own.push({ ...sources[0]!, error: -1, sd: 0 });
    const tubes = new Set<number>();
    const errors = new Set<number>();
    for (const part of own) {
      if (part.error >= 0) errors.add(part.error);
      if ('tube' in part.source) tubes.add(part.source.tube);
      else {
        const from = piles[part.source.pile]!;
        from.tubes.forEach((t) => tubes.add(t));
        from.errors.forEach((e) => errors.add(e));
      }
    }
    underway.delete(id);
    const index = piles.length;
    piles.push({ id, parts: own, tubes: [...tubes].toSorted((a, b) => a - b), errors: [...errors] });
    pileOf.set(id, index);
    if (drawdown !== undefined) byDrawdown.set(drawdown, index);
    return index;
  };

  for (const id of items.keys()) build(id, id);
  return { tubeIds, piles, pileOf, errorCount };
}

interface Source {
  readonly source: PartSource;
  readonly grams: number;
}

function sourcesOf(
  item: Swatch | Check,
  tubeIndex: (id: string, by: string) => number,
  pileIndex: (id: string) => number,
): Source[] {
  if ((item.masses === undefined) === (item.made === undefined)) {
    throw new SwatchSetProblem(
      say('masses-or-made', {
        id: item.id,
        what: item.masses ? say('both-masses-and-made') : say('neither-masses-nor-made'),
      }),
      'swatches',
    );
  }
  const sources: Source[] = item.made
    ? item.made.map((step) =>
        'from' in step
          ? { source: { pile: pileIndex(step.from) }, grams: step.grams }
          : { source: { tube: tubeIndex(step.tube, item.id) }, grams: step.grams },
      )
    : Object.entries(item.masses!)
        .map(([id, grams]) => ({ source: { tube: tubeIndex(id, item.id) }, grams }))
        .filter(({ grams }) => grams > 0);
  if (sources.length === 0) {
    throw new SwatchSetProblem(say('no-paint', { id: item.id }), 'swatches');
  }
  return sources;
}

/** Shares of a pile's tubes for given weighing errors, and their slopes. */
export interface PileShares {
  /** One per tube of the set; they sum to 1. */
  readonly shares: Float64Array;
  /** d shares / d e for each error in `pile.errors`, in that order. */
  readonly slopes: readonly Float64Array[];
}

/** Composition of one pile under the errors `e` (all of the set's; zeros are the weighing as written). */
export function sharesOfPile(all: Piles, index: number, e: ArrayLike<number>): PileShares {
  const pile = all.piles[index]!;
  const count = all.tubeIds.length;
  const mass = new Float64Array(count);
  const slopes: Float64Array[] = [];
  for (let k = 0; k < pile.errors.length; k++) slopes.push(new Float64Array(count));
  for (const part of pile.parts) {
    const grams = part.error >= 0 ? part.grams * Math.exp(part.sd * e[part.error]!) : part.grams;
    const own = part.error >= 0 ? slopes[pile.errors.indexOf(part.error)] : undefined;
    if ('tube' in part.source) {
      mass[part.source.tube]! += grams;
      if (own) own[part.source.tube]! += part.sd * grams;
      continue;
    }
    const from = sharesOfPile(all, part.source.pile, e);
    const fromErrors = all.piles[part.source.pile]!.errors;
    for (let t = 0; t < count; t++) {
      mass[t]! += grams * from.shares[t]!;
      if (own) own[t]! += part.sd * grams * from.shares[t]!;
    }
    from.slopes.forEach((slope, k) => {
      const into = slopes[pile.errors.indexOf(fromErrors[k]!)]!;
      for (let t = 0; t < count; t++) into[t]! += grams * slope[t]!;
    });
  }
  let total = 0;
  for (let t = 0; t < count; t++) total += mass[t]!;
  for (const slope of slopes) {
    let sum = 0;
    for (let t = 0; t < count; t++) sum += slope[t]!;
    for (let t = 0; t < count; t++) slope[t] = (slope[t]! - (mass[t]! / total) * sum) / total;
  }
  for (let t = 0; t < count; t++) mass[t]! /= total;
  return { shares: mass, slopes };
}
