import { ciede2000Steps } from '../../colour/ciede2000.ts';
import { DEFAULT_WHITE, type WhiteName } from '../../colour/illuminant.ts';
import { chroma } from '../../colour/lab.ts';
import { WARM_HUE_DEGREES, lean } from '../../colour/lean.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import { type AdditionProblem, type RoughAddition, eachAddition } from '../addition/each-addition.ts';
import { withBlends } from '../blend.ts';
import type { Masses } from '../film-stack.ts';
import { valueOfL } from '../limits/edge-search.ts';
import { squaresGoal } from '../limits/extreme-goals.ts';
import { searchOn } from '../search/come-down.ts';
import { MixProblem, type Watch } from '../problem.ts';
import type { Goal } from '../search/goal.ts';
import { tubeSet } from '../tube-set.ts';
import { say } from '../sentences.ts';

export const NUDGES = ['warmer', 'cooler', 'lighter', 'darker', 'greyer'] as const;
export type Nudge = (typeof NUDGES)[number];

/** The least paint that moves a mix one just-visible step. */
export interface NudgeAddition {
  readonly nudge: Nudge;
  readonly add: Masses;
  readonly grams: number;
  /** CIEDE2000 the mix moves in all. */
  readonly moved: number;
  /** What happens to value, lean and chroma. */
  readonly value: number;
  readonly lean: number;
  readonly chroma: number;
}

/** One just-visible step side by side: CIEDE2000 1. */
const STEP = 1;
/** Value kept to this, and the step made to this share, or the addition does not count. */
const VALUE_KEPT = 0.02;
const MADE = 0.9;
/** A step within this of one just-visible is one, CIEDE2000; and how often it is aimed at anew. */
const NEAR_STEP = 0.1;
const ROUNDS = 4;
const HELD = 400;
const AIMED = 100;
const LOOSELY = 0.02;

type Colour = { readonly L: number; readonly a: number; readonly b: number };

/** Length of a step in a direction that CIEDE2000 calls 1. */
function stepLength(at: Colour, d: Colour): number {
  const tiny = 0.01;
  const { dE00 } = ciede2000Steps(at, { L: at.L + tiny * d.L, a: at.a + tiny * d.a, b: at.b + tiny * d.b });
  return (STEP * tiny) / dE00;
}

interface Aim {
  readonly goal: Goal;
  /** How much of the wanted step a colour has made, 1 for all of it. */
  made(u: Float64Array): number;
  readonly holdsValue: boolean;
}

function aimOf(nudge: Nudge, u: Float64Array, steps = 1): Aim | undefined {
  const at = { L: u[0]!, a: u[1]!, b: u[2]! };
  const valueL = u[3]!;
  const h = (WARM_HUE_DEGREES * Math.PI) / 180;
  if (nudge === 'lighter' || nudge === 'darker') {
    const sign = nudge === 'lighter' ? 1 : -1;
    const by = steps * sign * stepLength(at, { L: sign, a: 0, b: 0 });
    return {
      goal: squaresGoal([
        { of: [0, 0, 0, 1], to: valueL + by, weight: AIMED },
        { of: [0, 1, 0, 0], to: at.a, weight: 1 },
        { of: [0, 0, 1, 0], to: at.b, weight: 1 },
      ]),
      made: (v) => (v[3]! - valueL) / by,
      holdsValue: false,
    };
  }
  const C = chroma(at);
  if (nudge === 'greyer' && C < STEP) return undefined;
  const sign = nudge === 'cooler' ? -1 : 1;
  const [ca, sb] = nudge === 'greyer' ? [-at.a / C, -at.b / C] : [sign * Math.cos(h), sign * Math.sin(h)];
  const by = Math.min(steps * stepLength(at, { L: 0, a: ca, b: sb }), nudge === 'greyer' ? C : Infinity);
  const along = ca * at.a + sb * at.b;
  const across = -sb * at.a + ca * at.b;
  return {
    goal: squaresGoal([
      { of: [0, 0, 0, 1], to: valueL, weight: HELD },
      { of: [0, ca, sb, 0], to: along + by, weight: AIMED },
      { of: [0, -sb, ca, 0], to: across, weight: LOOSELY },
    ]),
    made: (v) => (ca * v[1]! + sb * v[2]! - along) / by,
    holdsValue: true,
  };
}

/**
 * For each nudge the smallest addition that makes a mix one just-visible step warmer, cooler or greyer while its value
 * is held, or lighter or darker while its colour is nearly held. A nudge no addition can make is left out.
 * @throws MixProblem for an empty mix, unknown tubes or nudges.
 * @throws MixingStopped
 */
export function nudges(
  palette: MixingPalette,
  masses: Masses,
  options: {
    readonly nudges?: readonly Nudge[];
    readonly white?: WhiteName;
    readonly only?: readonly string[];
    readonly watch?: Watch;
  } = {},
): NudgeAddition[] {
  const { white = DEFAULT_WHITE, only, watch } = options;
  const asked = options.nudges ?? NUDGES;
  const unknown = asked.find((n) => !NUDGES.includes(n));
  if (unknown) throw new MixProblem(say('nudge', { nudge: unknown, known: NUDGES.join(', ') }));
  const all = tubeSet(palette, { white });
  const set = withBlends(all, [{ id: 'the mix', masses }]);
  const problem: AdditionProblem = {
    search: searchOn(set),
    pile: set.ids.length - 1,
    pileGrams: Object.values(masses).reduce((a, b) => a + b, 0),
    tubes: tubeSet(palette, { white, ...(only ? { only } : {}) }).ids.map((id) => all.ids.indexOf(id)),
    most: 2,
  };
  problem.search.kernel.choose([problem.pile]);
  problem.search.kernel.colour(Float64Array.of(1));
  const before = Float64Array.from(problem.search.kernel.u);
  /** The least addition that makes a step, or so many of them as the equations of the eye see one straight ahead. */
  const least = (nudge: Nudge, steps: number): NudgeAddition | undefined => {
    const aim = aimOf(nudge, before, steps);
    if (!aim) return undefined;
    const fits = (r: RoughAddition): boolean =>
      aim.made(r.u) >= MADE &&
      (!aim.holdsValue || Math.abs(valueOfL(r.u[3]!) - valueOfL(before[3]!)) <= VALUE_KEPT);
    const best = eachAddition(problem, aim.goal, watch)
      .filter(fits)
      .reduce<RoughAddition | undefined>((a, b) => (a && a.total <= b.total ? a : b), undefined);
    return best && spelt(nudge, best, before, set.ids);
  };
  return asked.flatMap((nudge) => {
    // Paint seldom moves straight: what it does sideways makes a step look larger or smaller than it was aimed at.
    let steps = 1;
    let found = least(nudge, steps);
    for (let round = 0; found && round < ROUNDS && Math.abs(found.moved - STEP) > NEAR_STEP; round++) {
      steps *= STEP / found.moved;
      const next = least(nudge, steps);
      if (!next || Math.abs(next.moved - STEP) >= Math.abs(found.moved - STEP)) break;
      found = next;
    }
    return found ? [found] : [];
  });
}

function spelt(nudge: Nudge, r: RoughAddition, before: Float64Array, ids: readonly string[]): NudgeAddition {
  const from = { L: before[0]!, a: before[1]!, b: before[2]! };
  const to = { L: r.u[0]!, a: r.u[1]!, b: r.u[2]! };
  return {
    nudge,
    add: Object.fromEntries(r.tubes.map((t, j) => [ids[t]!, r.grams[j]!])),
    grams: r.total,
    moved: ciede2000Steps(from, to).dE00,
    value: valueOfL(r.u[3]!) - valueOfL(before[3]!),
    lean: lean(to) - lean(from),
    chroma: chroma(to) - chroma(from),
  };
}
