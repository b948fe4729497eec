import type { FitProblem } from '../model/problem.ts';
import type { DiscrepancySds } from '../model/weights.ts';
import { blockEvidence } from './block-evidence.ts';
import { sizesAboutUsual } from './sizes-about-usual.ts';

/** Multiples of the roughness of the settings: from an earth's slow curve to bands of 10 nm. */
const TRIED = [0.35, 0.6, 1, 1.7, 2.8];
const LOGS = TRIED.map(Math.log);
/** ln spread of tubes about what is usual in the set, and of that about the settings. */
const SPREAD = 0.4;
const SET_SPREAD = 0.7;

/**
 * How rough each tube's ln K is, by the readings' own probability (block-evidence.ts): a palette of sharp bands must not
 * be smoothed as one of earths. What few channels cannot tell is taken from the other tubes of the set.
 */
export function roughnessSizes(problem: FitProblem, x: Float64Array, sds: DiscrepancySds): Float64Array {
  const { blocks } = problem.layout;
  const curves = blocks.map(({ tubes }, b) => {
    const against = blockEvidence(problem, x, b);
    return TRIED.map((times) => {
      const roughness = problem.roughness.slice();
      for (const t of tubes) roughness[t] = times;
      return tubes.length > 0 ? against(sds.blocks[b]!, sds.haze, roughness) : 0;
    });
  });
  const usual = { log: 0, weight: (SPREAD / SET_SPREAD) ** 2, spread: SPREAD, passes: 10 };
  const { logs } = sizesAboutUsual(LOGS, curves, (b) => blocks[b]!.tubes.length > 0, usual);
  const roughness = problem.roughness.slice();
  blocks.forEach(({ tubes }, b) => tubes.forEach((t) => (roughness[t] = Math.exp(logs[b]!))));
  return roughness;
}
