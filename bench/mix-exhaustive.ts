import { type Candidate, type Search, searchOn } from '../src/mix/search/come-down.ts';
import { EVEN, type WantedChannels, differenceGoal } from '../src/mix/search/goal.ts';
import { choices } from '../src/mix/search/net.ts';
import type { TubeSet } from '../src/mix/tube-set.ts';

/** Starts per family: even parts, each tube leading, each tube nearly absent. */
function starts(m: number): Float64Array[] {
  const at = (f: (j: number) => number): Float64Array => Float64Array.from({ length: m }, (_, j) => f(j));
  const out = [at(() => 1)];
  if (m === 1) return out;
  for (let k = 0; k < m; k++)
    out.push(
      at((j) => (j === k ? 12 : 1)),
      at((j) => (j === k ? 0.05 : 1)),
    );
  return out;
}

/**
 * The reference: CIEDE2000 itself brought down from many starts in every family of one to four tubes, nothing pruned.
 * Returns the least CIEDE2000 found.
 */
export function exhaustiveMatch(set: TubeSet, target: WantedChannels): { deltaE00: number; best: Candidate } {
  const search: Search = searchOn(set);
  const goal = differenceGoal(target, EVEN);
  let best: Candidate = { tubes: [], parts: new Float64Array(), cost: Infinity };
  for (let m = 1; m <= 4; m++) {
    for (const tubes of choices(set.ids.length, m)) {
      search.kernel.choose(tubes);
      search.problem.aim(goal, m);
      for (const start of starts(m)) {
        const cost = search.descent.solve(search.problem, start, m, { maxIterations: 60 });
        if (cost < best.cost) best = { tubes, parts: start, cost };
        if (best.cost < 1e-8) return { deltaE00: Math.sqrt(best.cost), best };
      }
    }
  }
  return { deltaE00: Math.sqrt(best.cost), best };
}
