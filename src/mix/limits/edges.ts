import { type EdgeMix, type EdgeSearch, valueLOf } from './edge-search.ts';
import { comeDown } from '../search/come-down.ts';
import { alongHue, leanAtValue, neutralAtValue, towardValue } from './extreme-goals.ts';
import { familyAlong } from '../value-string/family-along.ts';
import type { Watch } from '../problem.ts';

/** The darkest mix: Y under C/2deg as small as can be. */
export function darkest(edge: EdgeSearch): EdgeMix {
  return edge.mixOf(edge.reach(towardValue(-10)).x);
}

/** The lightest mix. */
export function lightest(edge: EdgeSearch): EdgeMix {
  return edge.mixOf(edge.reach(towardValue(110)).x);
}

/** A point of the neutral line: the mix of least chroma at one value. */
export interface NeutralPoint extends EdgeMix {
  /** The value asked for; `value` is the mix's own. */
  readonly wantedValue: number;
}

/** Most tubes in a neutral: more would only make the ratio wander. */
const MOST_TUBES = 4;

/**
 * The neutral line: at each value the mix nearest to neutral and its ratio, from one family of tubes throughout where
 * one can do it. Values that no mix of these tubes has are left out. @throws MixingStopped
 */
export function neutralLine(edge: EdgeSearch, values: readonly number[], watch?: Watch): NeutralPoint[] {
  const targets = values.map((v) => ({ L: valueLOf(v), a: 0, b: 0, valueL: valueLOf(v) }));
  return familyAlong(edge.search, targets, MOST_TUBES, { watch }).flatMap(({ candidate }, i) => {
    if (!candidate) return [];
    // The string is judged by CIEDE2000; the neutral line by chroma.
    const goal = neutralAtValue(targets[i]!.valueL);
    const mix = comeDown(edge.search, goal, candidate.tubes, candidate.parts, false) ?? candidate;
    const x = new Float64Array(edge.search.set.ids.length);
    mix.tubes.forEach((t, j) => (x[t] = mix.parts[j]!));
    return [{ ...edge.mixOf(x), wantedValue: values[i]! }];
  });
}

/** The warmest and the coolest mix of one value. */
export interface LeanPair {
  readonly value: number;
  readonly warmest: EdgeMix;
  readonly coolest: EdgeMix;
}

/** How far past anything paint can do a lean is asked for, CIELAB units. */
const BEYOND = 150;
/** Munsell value a mix may miss what was held. */
const VALUE_MISSED = 0.03;

/** How warm and how cool each value can go; values no mix has are left out. */
export function leanLimits(edge: EdgeSearch, values: readonly number[]): LeanPair[] {
  return values.flatMap((value) => {
    const warmest = edge.mixOf(edge.reach(leanAtValue(BEYOND, valueLOf(value))).x);
    const coolest = edge.mixOf(edge.reach(leanAtValue(-BEYOND, valueLOf(value))).x);
    const off = Math.max(Math.abs(warmest.value - value), Math.abs(coolest.value - value));
    return off < VALUE_MISSED ? [{ value, warmest, coolest }] : [];
  });
}

/** The strongest colour of one hue. */
export interface StrongestColour extends EdgeMix {
  /** The hue asked for, degrees of CIELAB. */
  readonly hue: number;
}

/** How far ahead of itself a search for chroma aims, and when it has arrived. CIELAB units. */
const AHEAD = 25;
const ARRIVED = 0.05;
const MOST_ROUNDS = 8;
/** How far a mix may lie off a hue asked for, CIELAB units. */
const HUE_HELD = 0.5;

/** Amounts of a strong mix, as in an edge search, and how far out it is along its hue, CIELAB units. */
export interface OutermostMix {
  readonly x: Float64Array;
  readonly chroma: number;
}

/** How far out a search for chroma aims first, CIELAB units; less where the value is held, which leaves less room. */
const AIM = { anyValue: 60, oneValue: 30 };

/**
 * The strongest mix along a hue (degrees), at one L* under C/2deg or at any; undefined where the hue is not reached.
 * `from`: a strong mix of about that hue to begin at.
 */
export function outermost(
  edge: EdgeSearch,
  hue: number,
  valueL?: number,
  from?: OutermostMix,
): OutermostMix | undefined {
  const h = (hue * Math.PI) / 180;
  const aim = valueL === undefined ? AIM.anyValue : AIM.oneValue;
  const first = Math.max(aim, from ? from.chroma + AHEAD : 0);
  let at = edge.reach(alongHue(h, first, valueL), from?.x);
  let along = at.u[1]! * Math.cos(h) + at.u[2]! * Math.sin(h);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const next = edge.reach(alongHue(h, along + AHEAD, valueL), at.x);
    const further = next.u[1]! * Math.cos(h) + next.u[2]! * Math.sin(h);
    at = next;
    const gain = further - along;
    along = further;
    if (Math.abs(gain) < ARRIVED) break;
  }
  const off = Math.abs(-at.u[1]! * Math.sin(h) + at.u[2]! * Math.cos(h));
  const missed = valueL === undefined ? 0 : Math.abs(at.u[3]! - valueL);
  return off < HUE_HELD && missed < HUE_HELD && along > 0 ? { x: at.x, chroma: along } : undefined;
}

/**
 * The strongest colour of each hue asked for (degrees of CIELAB), at whatever value it has it. `from`: a strong mix of
 * each hue to begin at, where one is known.
 */
export function strongestPerHue(
  edge: EdgeSearch,
  hues: readonly number[],
  from: readonly (OutermostMix | undefined)[] = [],
): StrongestColour[] {
  return hues.flatMap((hue, k) => {
    const start = from[k];
    const found = (start && outermost(edge, hue, undefined, start)) ?? outermost(edge, hue);
    return found ? [{ ...edge.mixOf(found.x), hue }] : [];
  });
}
