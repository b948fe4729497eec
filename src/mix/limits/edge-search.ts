import type { WhiteName } from '../../colour/illuminant.ts';
import { type Lab, chroma, labF } from '../../colour/lab.ts';
import { lean } from '../../colour/lean.ts';
import { luminanceOfValue, valueOfLuminance } from '../../colour/munsell-value.ts';
import type { Masses } from '../film-stack.ts';
import { type Search, searchOn } from '../search/come-down.ts';
import type { Goal } from '../search/goal.ts';
import { type MixNet, mixNet } from '../search/net.ts';
import type { TubeSet } from '../tube-set.ts';

/** A mix on an edge of what a palette can reach. */
export interface EdgeMix {
  /** Shares by mass, summing to 1. */
  readonly shares: Masses;
  readonly lab: Lab;
  /** Munsell value 0..10. */
  readonly value: number;
  readonly lean: number;
  readonly chroma: number;
}

/** L* under C/2deg of a Munsell value, and back. */
export const valueLOf = (value: number): number => 116 * labF(luminanceOfValue(value) / 100) - 16;
export const valueOfL = (L: number): number => {
  const f = (L + 16) / 116;
  return valueOfLuminance(100 * (f > 6 / 29 ? f ** 3 : 3 * (6 / 29) ** 2 * (f - 4 / 29)));
};

/** A search over all tubes of a set at once. Amounts are effective parts summing to 1. */
export interface EdgeSearch {
  readonly search: Search;
  /** Brings every tube's amount down to a goal, from the nearest knots of the net and from `from` where given. */
  reach(goal: Goal, from?: Float64Array): { x: Float64Array; u: Float64Array; cost: number };
  /** Spells amounts out. */
  mixOf(x: Float64Array): EdgeMix;
}

const MOST_ITERATIONS = 30;
/** Knots a search begins at, each of another family. */
const STARTS = 2;

export function edgeSearch(set: TubeSet): EdgeSearch {
  const search = searchOn(set);
  const n = set.ids.length;
  const everything = Array.from({ length: n }, (_, i) => i);
  const net: MixNet = mixNet(set, n > 8 ? 2 : 3);
  const u = new Float64Array(4);
  const knot = new Float64Array(4);

  const nearest = (goal: Goal): Float64Array[] => {
    const best: { cost: number; family: number; knot: number }[] = [];
    net.families.forEach((family, f) => {
      let least = Infinity;
      let at = 0;
      for (let k = 0; k < family.count; k++) {
        const p = 4 * (family.first + k);
        for (let c = 0; c < 4; c++) u[c] = net.colours[p + c]!;
        const cost = goal.cost(u);
        if (cost < least) {
          least = cost;
          at = k;
        }
      }
      if (best.length < STARTS || least < best.at(-1)!.cost) {
        best.push({ cost: least, family: f, knot: at });
        best.sort((a, b) => a.cost - b.cost);
        best.length = Math.min(best.length, STARTS);
      }
    });
    return best.map(({ family, knot: k }) => {
      const x = new Float64Array(n).fill(1e-4);
      net.partsOf(net.families[family]!, k, knot);
      net.families[family]!.tubes.forEach((t, j) => (x[t]! += knot[j]!));
      return x;
    });
  };

  const colour = (x: Float64Array): void => {
    search.kernel.choose(everything);
    search.kernel.colour(x);
  };

  return {
    search,
    reach(goal, from) {
      search.kernel.choose(everything);
      search.problem.aim(goal, n);
      let best: { x: Float64Array; cost: number } = { x: new Float64Array(n), cost: Infinity };
      for (const x of from ? [Float64Array.from(from)] : nearest(goal)) {
        const cost = search.descent.solve(search.problem, x, n, { maxIterations: MOST_ITERATIONS });
        if (cost < best.cost) best = { x, cost };
      }
      colour(best.x);
      return { ...best, u: Float64Array.from(search.kernel.u) };
    },
    mixOf(x) {
      colour(x);
      const [L, a, b, v] = search.kernel.u;
      const lab: Lab<WhiteName> = { L: L!, a: a!, b: b!, white: set.white };
      const masses = everything.map((t) => x[t]! / set.strength[t]!);
      const total = masses.reduce((s, m) => s + m, 0);
      const shares = Object.fromEntries(
        everything.flatMap((t) => (masses[t]! > 1e-7 * total ? [[set.ids[t]!, masses[t]! / total]] : [])),
      );
      return { shares, lab, value: valueOfL(v!), lean: lean(lab), chroma: chroma(lab) };
    },
  };
}
