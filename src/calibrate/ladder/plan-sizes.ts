/**
 * Sizes of pours for one way of making a ladder: which rung is made from which. A rung's pile must be large enough for
 * its own drawdown and for what later rungs take from it, no pour may be smaller than can be poured, and the error of
 * every ratio must come down to what is wanted. Sizes start at the least and grow where a gram helps the worst rung
 * most; that is a good plan, not a proven least one.
 */
import { ladderRatios, lnRatiosOf } from './ratios.ts';

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

const GROWTH = 1.08;
const ROUNDS = 400;

/** Sizes every step. Steps are in ascending parts of white. */
export function sizeSteps(steps: readonly Step[], limits: SizeLimits): SizedStep[] {
  const growth = steps.map(() => 1);
  let sized = size(steps, growth, limits);
  for (let round = 0; round < ROUNDS; round++) {
    const worst = Math.max(...sized.map((s) => s.ratioSigma));
    if (worst <= limits.wantedSigma) break;
    const weightNow = grams(sized);
    let best: { gain: number; at: number; sized: SizedStep[] } | undefined;
    for (const at of chainOf(
      steps,
      sized.findIndex((s) => s.ratioSigma === worst),
    )) {
      growth[at]! *= GROWTH;
      const tried = size(steps, growth, limits);
      growth[at]! /= GROWTH;
      const fall = worst - Math.max(...tried.map((s) => s.ratioSigma));
      const gain = fall / Math.max(1e-9, grams(tried) - weightNow);
      if (!best || gain > best.gain) best = { gain, at, sized: tried };
    }
    growth[best!.at]! *= GROWTH;
    sized = best!.sized;
  }
  return sized;
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

function sigmasOf(sized: readonly SizedStep[], resolution: number): number[] {
  const swatches = sized.map((s, i) => ({
    id: String(i),
    made: [
      s.from < 0 ? { tube: 'paint', grams: s.taken } : { from: String(s.from), grams: s.taken },
      ...(s.white > 0 ? [{ tube: 'white', grams: s.white }] : []),
    ],
  }));
  const { ids, covariance } = lnRatiosOf(ladderRatios(swatches, { resolution }), 'paint', 'white');
  const sigmas = sized.map(() => 0);
  ids.forEach((id, j) => (sigmas[Number(id)] = Math.sqrt(covariance[j]![j]!)));
  return sigmas;
}
