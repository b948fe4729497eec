/**
 * Mistakes at the scale. A rung's ratio is fitted within its weighing error; one that is far outside was weighed, noted
 * or painted wrong. Each rung is asked what ratio it reads like with the others alone deciding the tube (the block is
 * refitted without it), and how probable that is against an honest rung.
 */
import { sharesOfPile } from '../../calibrate/swatch-set/piles.ts';
import type { SwatchTube } from '../../calibrate/swatch-set/schema.ts';
import { costAt, readingsCost } from '../model/linearise.ts';
import type { FitProblem } from '../model/problem.ts';
import type { Solution } from '../solve/solve-palette.ts';
import { withoutGroup } from './leave-out.ts';
import { say } from '../sentences.ts';

/** One rung whose paint-to-white ratio is not what was weighed. */
export interface WrongRatio {
  /** Ids of the swatches painted from that pile. */
  readonly swatches: readonly string[];
  readonly tube: string;
  /** Parts white to one part paint, as weighed and as it reads. */
  readonly weighed: number;
  readonly readsLike: number;
  /** Chance that the ratio is wrong rather than unlucky, 0..1. */
  readonly probability: number;
  /** The two masses look to have been noted the wrong way round. */
  readonly swapped: boolean;
  readonly words: string;
  /** Cost of the tube's other rungs without this one: of two rungs at odds, leaving out the guilty one leaves less. */
  readonly remaining: number;
}

/** One rung in a hundred is taken to be a mistake before anything is read. Common practice, no source. */
const MISTAKES = 0.01;
/** A mistaken ratio may be anything within about a factor of e^1.5. */
const MISTAKE_SD = 1.5;
/** Named from this chance on. */
const NAMED = 0.9;
/** Standard deviation of the ln ratio one rung reads like by the others, beyond all noise. This project's choice. */
export const FORETOLD = 0.1;
/** ln ratio steps tried around the weighed ratio. */
const TRIED = Array.from({ length: 61 }, (_, i) => -3.75 + i * 0.125);

/** Rungs of a tube that must stand beside a suspect. */
const LEAST_BESIDE = 3;

/** The rungs of a solution that were likely weighed or noted wrong, of a tube the guiltiest first. */
export function wrongRatios(problem: FitProblem, solution: Solution): WrongRatio[] {
  const { piles, white, set } = problem;
  const found: WrongRatio[] = [];
  problem.groups.forEach((group, g) => {
    const others = group.tubes.filter((t) => t !== white);
    const pile = piles.piles[group.pile]!;
    if (others.length !== 1 || group.tubes.length !== 2 || pile.errors.length !== 1) return;
    const t = others[0]!;
    // With fewer rungs beside it, a disagreement cannot be laid at one of them.
    const beside = problem.groups.flatMap((k, i) => (i !== g && k.tubes.includes(t) ? [i] : []));
    if (beside.length < LEAST_BESIDE) return;
    const left = withoutGroup(problem, solution, g);
    if (!left) return;
    const b = problem.layout.blockOfPile[group.pile]!;
    const place = problem.layout.errors[pile.errors[0]!]!;
    const part = pile.parts.find((p) => p.error >= 0)!;
    const sign = 'tube' in part.source && part.source.tube === white ? -1 : 1;
    const best = readsLike(problem, solution, left, g, place, part.sd);
    const lnOff = best.e * part.sd * sign;
    const sd = Math.hypot(part.sd, best.sd);
    const probability = chanceOfMistake(best.e * part.sd, sd);
    if (!(probability >= NAMED)) return;
    const zero = new Float64Array(piles.errorCount);
    const c = sharesOfPile(piles, group.pile, zero).shares[t]!;
    const weighed = (1 - c) / c;
    const reads = weighed * Math.exp(-lnOff);
    // Swapped masses turn the ratio into its inverse: twice its logarithm away. Read like within a few sd of it, and of
    // what the equations miss of one rung told by the others.
    const fromInverse = Math.abs(Math.log(reads) + Math.log(weighed));
    const swapped = fromInverse < 4 * Math.hypot(sd, FORETOLD) && fromInverse < Math.abs(Math.log(weighed));
    const id = set.tubes[t]!.id;
    found.push({
      swatches: group.swatches.map((s) => s.swatch.id),
      tube: id,
      weighed,
      readsLike: reads,
      probability,
      swapped,
      remaining: costAt(problem, solution.weights, left, new Set(beside), b),
      words: wrongRatioWords({
        rung: group.swatches[0]!.swatch.id,
        tube: set.tubes[t]!,
        weighed,
        readsLike: reads,
        probability,
        swapped,
      }),
    });
  });
  return found.toSorted((a, b) => a.remaining - b.remaining);
}

/**
 * Chance that a ratio is a mistake rather than unlucky, 0..1.
 * @param lnOff ln of (ratio it reads like / ratio weighed)
 * @param sd standard deviation of that where nothing is wrong
 */
export function chanceOfMistake(lnOff: number, sd: number): number {
  const honest = (1 - MISTAKES) * density(lnOff, sd);
  const mistaken = MISTAKES * density(lnOff, Math.hypot(MISTAKE_SD, sd));
  return mistaken / (mistaken + honest);
}

/** The sentence about one rung; `rung` is the id of its first swatch, ratios are parts of white to one of the tube. */
export function wrongRatioWords(found: {
  readonly rung: string;
  readonly tube: SwatchTube;
  readonly weighed: number;
  readonly readsLike: number;
  readonly probability: number;
  readonly swapped: boolean;
}): string {
  const { rung, tube, weighed, readsLike, probability, swapped } = found;
  return say('wrong-ratio', {
    rung,
    weighed: figure(weighed),
    tube: tube.label || tube.id,
    reads: figure(readsLike),
    swapped: swapped ? say('swapped') : '',
    // Nothing is certain: no more than 99.9.
    percent: Math.min(99.9, Math.floor(probability * 1000) / 10),
  });
}

/** The weighing error (in its own standard deviations) at which a pile reads best, the tube held as the others have it. */
function readsLike(
  problem: FitProblem,
  solution: Solution,
  left: Float64Array,
  g: number,
  place: number,
  sd: number,
): { e: number; sd: number } {
  const only = new Set([g]);
  const x = Float64Array.from(left);
  const cost = (lnRatio: number): number => {
    x[place] = lnRatio / sd;
    // Without the weighing's prior, for it is what is being asked about.
    return readingsCost(problem, solution.weights, x, only);
  };
  let best = TRIED.reduce((a, v) => (cost(v) < cost(a) ? v : a));
  let step = 0.125;
  for (let pass = 0; pass < 6; pass++) {
    for (const v of [best - step / 2, best + step / 2]) if (cost(v) < cost(best)) best = v;
    step /= 2;
  }
  const h = 0.02;
  const bend = (cost(best + h) - 2 * cost(best) + cost(best - h)) / (h * h);
  return { e: best / sd, sd: bend > 0 ? 1 / Math.sqrt(bend) : MISTAKE_SD };
}

function density(v: number, sd: number): number {
  return Math.exp(-0.5 * (v / sd) ** 2) / sd;
}

function figure(ratio: number): string {
  return ratio >= 10 ? ratio.toFixed(0) : ratio >= 1 ? ratio.toFixed(1) : ratio.toFixed(2);
}
