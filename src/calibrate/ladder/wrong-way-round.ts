/**
 * Masses entered the wrong way round: paint's grams in the white's place. Two tests, one before anything is read, by
 * the rung's name, one after a fit, by the ratio the swatch reads like.
 */
import { parseRungName, rungName } from './rung-name.ts';
import { say } from './sentences.ts';

export interface WrongWayRound {
  /** The masses are more likely swapped than as entered. */
  readonly swapped: boolean;
  /** Probability that they are swapped, 0..1. */
  readonly probability: number;
  /** One sentence; empty when nothing is amiss. */
  readonly sentence: string;
}

/** How often a person swaps the two, and how often a ratio is wrong in some other way. Guesses, no source. */
const SWAPPED_BEFORE = 0.01;
const OTHERWISE_WRONG_BEFORE = 0.02;
/** Some other mistake puts ln ratio anywhere in a range this wide. */
const OTHERWISE_WIDTH = 8;

function judge(entered: number, seen: number, sigma: number): number {
  const normal = (x: number): number => Math.exp(-((x / sigma) ** 2) / 2) / (sigma * Math.sqrt(2 * Math.PI));
  const asEntered = (1 - SWAPPED_BEFORE - OTHERWISE_WRONG_BEFORE) * normal(seen - entered);
  const swapped = SWAPPED_BEFORE * normal(seen + entered);
  const otherwise = OTHERWISE_WRONG_BEFORE / OTHERWISE_WIDTH;
  return swapped / (asEntered + swapped + otherwise);
}

/**
 * By what a swatch reads like.
 * @param entered ln(paint/white) as weighed
 * @param readsLike ln(paint/white) that its readings call for
 * @param sigma standard deviation of the difference of the two when nothing is wrong (weighing and reading together)
 */
export function wrongWayRound(entered: number, readsLike: number, sigma: number): WrongWayRound {
  const probability = judge(entered, readsLike, Math.max(1e-6, sigma));
  // At 1:1 swapping changes nothing, so there is nothing to say.
  const swapped = probability > 0.5 && Math.abs(entered) > 1e-9;
  const name = (ln: number): string =>
    ln < 0 ? rungName(Math.exp(-ln)) : `${Number(Math.exp(ln).toPrecision(2))}:1`;
  return {
    swapped,
    probability,
    sentence: swapped ? say('reads-swapped', { reads: name(-entered), entered: name(entered) }) : '',
  };
}

/**
 * By the rung's name: masses that fit "1:4" turned round. Weighing is taken to be within 25 % of the plan.
 * `undefined` when the name says no ratio, or the two ways are too alike to tell.
 */
export function massesAgainstName(name: string, paint: number, white: number): WrongWayRound | undefined {
  const parts = parseRungName(name);
  if (!parts || parts.white === 0 || !(paint > 0) || !(white > 0)) return undefined;
  const nominal = Math.log(parts.paint / parts.white);
  if (Math.abs(nominal) < 0.25) return undefined;
  const seen = Math.log(paint / white);
  const probability = judge(nominal, seen, 0.25);
  const swapped = probability > 0.5;
  return {
    swapped,
    probability,
    sentence: swapped ? say('masses-swapped', { paint, white, rung: name }) : '',
  };
}
