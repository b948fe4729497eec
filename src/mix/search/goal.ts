/**
 * What a search makes small: half-squares in the four channels of the kernel (L, a, b under one white, L* under
 * C/2deg). A goal gives its cost, its exact gradient and a curvature that is never negative, which is all a damped
 * Gauss-Newton descent asks for.
 */
import { CHANNELS } from '../kernel.ts';
import { type DifferenceAbout, type PartWeights, differenceAbout } from './ciede2000-about.ts';

export interface Goal {
  /** Cost of a colour. */
  cost(u: Float64Array): number;
  /** Cost; its gradient into g (4); a positive semidefinite curvature into H (16, row by row). */
  model(u: Float64Array, g: Float64Array, H: Float64Array): number;
}

/** A wanted colour, channels as in the kernel. */
export interface WantedChannels {
  readonly L: number;
  readonly a: number;
  readonly b: number;
  /** L* under C/2deg, where the value is held by Munsell value rather than by L. */
  readonly valueL?: number;
}

/** How much each part of a difference counts; 1, 1, 1 is CIEDE2000 itself. */
export interface Emphasis extends PartWeights {
  /** On the difference of L* under C/2deg, where `valueL` is given. */
  readonly value: number;
}

/** All three evenly: plain CIEDE2000. */
export const EVEN: Emphasis = { lightness: 1, chroma: 1, hue: 1, value: 0 };

/** Into M (16): dE00^2 = d^T M d about a pair, with the weights S_L, S_C, S_H, R_T held as they are there. */
function metricInto(
  M: Float64Array,
  { SL, SC, SH, RT, G, a1p, a2p }: DifferenceAbout['at'],
  meanB: number,
  e: Emphasis,
  holdsValue: boolean,
): void {
  // Chroma and hue directions at the mean of the pair.
  const am = (a1p + a2p) / 2;
  const Cm = Math.sqrt(am * am + meanB * meanB);
  const cos = Cm > 0 ? am / Cm : 1;
  const sin = Cm > 0 ? meanB / Cm : 0;
  const cc = (e.chroma / SC) ** 2;
  const hh = (e.hue / SH) ** 2;
  const ch = (RT * e.chroma * e.hue) / (2 * SC * SH);
  const k = 1 + G;
  const ab = k * (cos * sin * (cc - hh) + (cos * cos - sin * sin) * ch);
  M.fill(0);
  M[0] = (e.lightness / SL) ** 2;
  M[5] = k * k * (cos * cos * cc - 2 * cos * sin * ch + sin * sin * hh);
  M[6] = M[9] = ab;
  M[10] = sin * sin * cc + 2 * cos * sin * ch + cos * cos * hh;
  M[15] = holdsValue ? e.value * e.value : 0;
}

/**
 * Near a target CIEDE2000 squared is a quadratic form; far from it the form is only roughly right, but it is smooth
 * everywhere, which makes it the goal to arrive by.
 */
export function quadraticGoal(
  target: WantedChannels,
  emphasis: Emphasis = EVEN,
): Goal & { readonly M: Float64Array } {
  const M = new Float64Array(CHANNELS * CHANNELS);
  const about = differenceAbout(target, emphasis);
  about.squareAndSlopes(target.L, target.a, target.b, new Float64Array(3));
  metricInto(M, about.at, target.b, emphasis, target.valueL !== undefined);
  const t0 = target.L;
  const t1 = target.a;
  const t2 = target.b;
  const t3 = target.valueL ?? 0;
  const m0 = M[0]!;
  const m5 = M[5]!;
  const m6 = M[6]!;
  const m10 = M[10]!;
  const m15 = M[15]!;
  return {
    M,
    cost(u) {
      const d0 = u[0]! - t0;
      const d1 = u[1]! - t1;
      const d2 = u[2]! - t2;
      const d3 = u[3]! - t3;
      return m0 * d0 * d0 + m5 * d1 * d1 + 2 * m6 * d1 * d2 + m10 * d2 * d2 + m15 * d3 * d3;
    },
    model(u, g, H) {
      const d0 = u[0]! - t0;
      const d1 = u[1]! - t1;
      const d2 = u[2]! - t2;
      const d3 = u[3]! - t3;
      for (let i = 0; i < 16; i++) H[i] = 2 * M[i]!;
      g[0] = 2 * m0 * d0;
      g[1] = 2 * (m5 * d1 + m6 * d2);
      g[2] = 2 * (m6 * d1 + m10 * d2);
      g[3] = 2 * m15 * d3;
      return (g[0]! * d0 + g[1]! * d1 + g[2]! * d2 + g[3]! * d3) / 2;
    },
  };
}

/** CIEDE2000 squared, its parts weighted, plus the squared difference of value where that is held. */
export function differenceGoal(target: WantedChannels, emphasis: Emphasis = EVEN): Goal {
  const about = differenceAbout(target, emphasis);
  const holdsValue = target.valueL !== undefined;
  const valueL = target.valueL ?? 0;
  const weight = holdsValue ? emphasis.value * emphasis.value : 0;
  return {
    cost: (u) => about.square(u[0]!, u[1]!, u[2]!) + weight * (u[3]! - valueL) * (u[3]! - valueL),
    model(u, g, H) {
      const cost = about.squareAndSlopes(u[0]!, u[1]!, u[2]!, g);
      const off = u[3]! - valueL;
      g[3] = 2 * weight * off;
      metricInto(H, about.at, (target.b + u[2]!) / 2, emphasis, holdsValue);
      for (let i = 0; i < 16; i++) H[i]! *= 2;
      return cost + weight * off * off;
    },
  };
}
