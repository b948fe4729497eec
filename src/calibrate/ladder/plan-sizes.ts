/**
 * Sizes of pours for one way of making a ladder: which rung is made from which. A rung's pile must be large enough for
 * its own drawdown and for what later rungs take from it, no pour may be smaller than can be poured, and the error of
 * every ratio must come down to what is wanted. Sizes start at the least and grow where a gram helps the worst rung
 * most; that is a good plan, not a proven least one.
 */
import { weighingErrorOfResolution } from '../swatch-set/piles.ts';

/** A rung and what it is let down from: -1 is the tube, else the index of an earlier rung. */
export interface Step {
  readonly whiteParts: number;
  readonly from: number;
}

export interface SizedStep extends Step {
  /** Grams taken of tube or pile. */
  readonly taken: number;
  /** Grams of white added; 0 for the masstone. */
  readonly white: number;
  readonly ratioSigma: number;
}

export interface SizeLimits {
  readonly resolution: number;
  readonly smallestPour: number;
  readonly perRung: number;
  readonly wantedSigma: number;
}

/** Growth of a pour in one round: least near the goal, most far from it. */
const [LEAST_GROWTH, MOST_GROWTH] = [1.05, 1.6];
const ROUNDS = 400;
/** Nobody mixes more than this for one ladder: past it the wanted error is out of reach. */
const MOST_GRAMS = 300;

/** Sizes every step. Steps are in ascending parts of white. */
export function sizeSteps(steps: readonly Step[], limits: SizeLimits): SizedStep[] {
  let growth: readonly number[] = steps.map(() => 1);
  let sized = size(steps, growth, limits);
  for (let round = 0; round < ROUNDS; round++) {
    const worst = Math.max(...sized.map((s) => s.ratioSigma));
    const growBy = Math.min(MOST_GROWTH, Math.max(LEAST_GROWTH, (worst / limits.wantedSigma) ** 0.25));
    const weightNow = grams(sized);
    if (worst <= limits.wantedSigma || weightNow > MOST_GRAMS) break;
    const chain = chainOf(
      steps,
      sized.findIndex((s) => s.ratioSigma === worst),
    );
    let best: { gain: number; at: readonly number[] } = { gain: 0, at: chain };
    for (const at of chain) {
      const tried = size(steps, grown(growth, [at], growBy), limits);
      const fall = worst - Math.max(...tried.map((s) => s.ratioSigma));
      const gain = fall / Math.max(1e-9, grams(tried) - weightNow);
      if (gain > best.gain) best = { gain, at: [at] };
    }
    // Where no single pour helps (the scale's steps are coarse), all that the worst rung rests on grow together.
    growth = grown(growth, best.at, growBy);
    sized = size(steps, growth, limits);
  }
  return sized;
}

function grown(growth: readonly number[], at: readonly number[], by: number): number[] {
  return growth.map((g, i) => (at.includes(i) ? g * by : g));
}

/** A step and all it is made from. */
function chainOf(steps: readonly Step[], at: number): number[] {
  const chain = [];
  for (let i = at; i >= 0; i = steps[i]!.from) chain.push(i);
  return chain;
}

/** Paint and white together. */
function grams(sized: readonly SizedStep[]): number {
  return sized.reduce((sum, s) => sum + s.white + (s.from < 0 ? s.taken : 0), 0);
}

/** Least sizes times their growth, from the last rung back, rounded up to what the scale shows. */
function size(steps: readonly Step[], growth: readonly number[], limits: SizeLimits): SizedStep[] {
  const { resolution, smallestPour, perRung } = limits;
  const up = (g: number): number => Number((Math.ceil(g / resolution - 1e-9) * resolution).toFixed(9));
  const near = (g: number): number =>
    Number((Math.max(1, Math.round(g / resolution)) * resolution).toFixed(9));
  const needed = steps.map(() => perRung);
  const sized: SizedStep[] = [];
  for (let i = steps.length - 1; i >= 0; i--) {
    const step = steps[i]!;
    const k = step.whiteParts;
    const base = step.from < 0 ? 0 : steps[step.from]!.whiteParts;
    // Of a pile of total T let down from `base` to `k` parts of white, this much is the pile it came from.
    const part = (1 + base) / (1 + k);
    let total = needed[i]!;
    if (k > 0) total = Math.max(total, smallestPour / part, smallestPour / (1 - part));
    const taken = up(total * growth[i]! * part);
    const white = k > 0 ? near((taken * (k - base)) / (1 + base)) : 0;
    if (step.from >= 0) needed[step.from]! += taken;
    sized[i] = { ...step, taken, white, ratioSigma: 0 };
  }
  const sigmas = sigmasOf(sized, resolution);
  return sized.map((s, i) => ({ ...s, ratioSigma: sigmas[i]! }));
}

/**
 * Standard deviation of each ln(paint/white), as ladderRatios has it, along one chain: for f grams of a pile with
 * paint share c (1 for the tube) and w grams of white, with s the part of all white that came with the pile,
 *
 *     var = ((1 - c) + c s)^2 var_pile + (1 - s)^2 sigma^2 (1/f^2 + 1/w^2)
 */
function sigmasOf(sized: readonly SizedStep[], resolution: number): number[] {
  const sigma2 = weighingErrorOfResolution(resolution) ** 2;
  const variance: number[] = [];
  const share: number[] = [];
  for (const { from, taken: f, white: w } of sized) {
    const c = from < 0 ? 1 : share[from]!;
    share.push((c * f) / (f + w));
    const brought = f * (1 - c);
    const s = brought / (brought + w || 1);
    const pile = from < 0 ? 0 : variance[from]!;
    const own = w > 0 ? (1 - s) ** 2 * sigma2 * (1 / f ** 2 + 1 / w ** 2) : 0;
    variance.push((1 - c + c * s) ** 2 * pile + own);
  }
  return variance.map(Math.sqrt);
}
