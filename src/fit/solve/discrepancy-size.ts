import type { FitProblem } from '../model/problem.ts';
import type { DiscrepancySds } from '../model/weights.ts';
import { type BlockEvidence, blockEvidence } from './block-evidence.ts';
import { sizesAboutUsual } from './sizes-about-usual.ts';

/** Sizes tried, standard deviation in ln(K/S): from under any reading noise to a paint the equations do not fit. */
const TRIED = [0.0025, 0.005, 0.01, 0.02, 0.04, 0.08, 0.16, 0.32];
const LOGS = TRIED.map(Math.log);
/** Haze tried, reflectance factor. */
const HAZE_TRIED = [0, 0.001, 0.002, 0.004, 0.008];
/**
 * The fit itself lets in no more haze than this: a veil free to differ from film to film takes away what the masstones say
 * of scattering (real set: mean over white card 2.2 with this, 3.5 without). A prediction carries all that was found.
 */
const HAZE_IN_FIT = 0.002;
const TWENTY_TO_ONE = Math.log(20);
/**
 * Before any evidence: about 1.5 %, within a factor of 1.6 or so; then about what the other tubes of the set showed. A
 * wider spread lets a tube of three rungs take its weighing errors for misfit of 30 %, and its mixtures go astray.
 */
const TYPICAL = 0.015;
const SPREAD = 0.5;

/**
 * Sizes what the equations miss, tube by tube, by the readings' own probability (block-evidence.ts). The tubes of one set
 * inform each other: a tube with too few rungs to tell takes what is usual for the set.
 */
export function discrepancySizes(
  problem: FitProblem,
  x: Float64Array,
  before: DiscrepancySds,
  hazeAsked = false,
): DiscrepancySds {
  const against = problem.layout.blocks.map((_, b) => blockEvidence(problem, x, b));
  const haze = problem.settings.hazeSd ?? (hazeAsked ? hazeSize(against, before) : before.haze);
  const inFit = Math.min(haze, HAZE_IN_FIT);
  const curves = against.map((f, b) =>
    curveAbout((sd) => f(sd, inFit), hazeAsked ? before.blocks[b]! : undefined),
  );
  const informs = (b: number): boolean => problem.layout.blocks[b]!.tubes.length > 0;
  // The typical size is itself doubted: it weighs as one more tube.
  const usual = { log: Math.log(TYPICAL), weight: 1, spread: SPREAD, passes: 3 };
  const { logs, centre } = sizesAboutUsual(LOGS, curves, informs, usual);
  // A mixture of tubes drawn from the set misses by the mean of their variances.
  const tubes = logs.filter((_, b) => informs(b));
  const square = tubes.reduce((a, v) => a + Math.exp(2 * v), Math.exp(2 * centre)) / (tubes.length + 1);
  return {
    blocks: Float64Array.from(logs, Math.exp),
    white: Math.exp(centre),
    typical: Math.sqrt(square),
    haze: inFit,
    hazeFound: haze,
  };
}

/** The curve over the sizes tried; about a size known before, no further than its foot. The rest is infinite. */
function curveAbout(against: (sd: number) => number, known?: number): number[] {
  if (known === undefined) return TRIED.map(against);
  const off = TRIED.map((sd) => Math.abs(Math.log(sd / known)));
  const curve = TRIED.map(() => Infinity);
  for (let i = off.indexOf(Math.min(...off)); ;) {
    for (const k of [i - 1, i, i + 1]) {
      if (k >= 0 && k < TRIED.length && curve[k] === Infinity) curve[k] = against(TRIED[k]!);
    }
    const best = curve.indexOf(Math.min(...curve));
    if (best === i) return curve;
    i = best;
  }
}

/**
 * Haze from film to film that the readings of all blocks have least against, the rest of the misfit held: none, unless
 * the readings are twenty to one against none.
 */
function hazeSize(against: readonly BlockEvidence[], sds: DiscrepancySds): number {
  const totals = HAZE_TRIED.map((haze) => against.reduce((sum, f, b) => sum + f(sds.blocks[b]!, haze), 0));
  const least = Math.min(...totals);
  return totals[0]! - least < TWENTY_TO_ONE ? 0 : HAZE_TRIED[totals.indexOf(least)]!;
}
