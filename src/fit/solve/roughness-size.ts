import type { FitProblem } from '../model/problem.ts';
import type { DiscrepancySds } from '../model/weights.ts';
import { blockEvidence, lowest } from './block-evidence.ts';

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
  let centre = 0;
  let logs: number[] = [];
  for (let pass = 0; pass < 10; pass++) {
    logs = curves.map((curve) => lowest(LOGS, curve, centre, SPREAD));
    const informed = logs.filter((_, b) => blocks[b]!.tubes.length > 0);
    const sum = informed.reduce((a, v) => a + v, 0);
    centre = sum / (informed.length + (SPREAD / SET_SPREAD) ** 2);
  }
  const roughness = problem.roughness.slice();
  blocks.forEach(({ tubes }, b) => tubes.forEach((t) => (roughness[t] = Math.exp(logs[b]!))));
  return roughness;
}
