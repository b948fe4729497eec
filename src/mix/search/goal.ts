/**
 * What a search makes small: half-squares in the four channels of the kernel (L, a, b under one white, L* under
 * C/2deg). A goal gives its cost, its exact gradient and a curvature that is never negative, which is all a damped
 * Gauss-Newton descent asks for.
 */
import { ciede2000Steps } from '../../colour/ciede2000.ts';
import { CHANNELS } from '../kernel.ts';

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
export interface Emphasis {
  readonly lightness: number;
  readonly chroma: number;
  readonly hue: number;
  /** On the difference of L* under C/2deg, where `valueL` is given. */
  readonly value: number;
}

/** All three evenly: plain CIEDE2000. */
export const EVEN: Emphasis = { lightness: 1, chroma: 1, hue: 1, value: 0 };

/** Into M (16): dE00^2 = d^T M d about a pair, with the weights S_L, S_C, S_H, R_T held as they are there. */
function metricInto(M: Float64Array, one: WantedChannels, two: WantedChannels, e: Emphasis): void {
  const { SL, SC, SH, RT, G, a1p, a2p } = ciede2000Steps(one, two);
  // Chroma and hue directions at the mean of the pair.
  const am = (a1p + a2p) / 2;
  const bm = (one.b + two.b) / 2;
  const Cm = Math.hypot(am, bm);
  const cos = Cm > 0 ? am / Cm : 1;
  const sin = Cm > 0 ? bm / Cm : 0;
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
  M[15] = two.valueL === undefined ? 0 : e.value * e.value;
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
  metricInto(M, target, target, emphasis);
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
  const at = { L: 0, a: 0, b: 0, valueL: 0 };
  const square = (L: number, a: number, b: number): number => {
    at.L = L;
    at.a = a;
    at.b = b;
    const s = ciede2000Steps(target, at);
    const l = (emphasis.lightness * (at.L - target.L)) / s.SL;
    const c = (emphasis.chroma * (s.C2p - s.C1p)) / s.SC;
    const half = (((s.h2p - s.h1p) / 2) * Math.PI) / 180;
    let h = (emphasis.hue * 2 * Math.sqrt(s.C1p * s.C2p) * Math.sin(half)) / s.SH;
    if (Math.abs(s.h2p - s.h1p) > 180) h = -h;
    return l * l + c * c + h * h + s.RT * c * h;
  };
  const valueSquare = (v: number): number =>
    target.valueL === undefined ? 0 : (emphasis.value * (v - target.valueL)) ** 2;
  const STEP = 1e-4;
  return {
    cost: (u) => square(u[0]!, u[1]!, u[2]!) + valueSquare(u[3]!),
    model(u, g, H) {
      const [L, a, b, v] = [u[0]!, u[1]!, u[2]!, u[3]!];
      g[0] = (square(L + STEP, a, b) - square(L - STEP, a, b)) / (2 * STEP);
      g[1] = (square(L, a + STEP, b) - square(L, a - STEP, b)) / (2 * STEP);
      g[2] = (square(L, a, b + STEP) - square(L, a, b - STEP)) / (2 * STEP);
      g[3] = target.valueL === undefined ? 0 : 2 * emphasis.value ** 2 * (v - target.valueL);
      at.L = L;
      at.a = a;
      at.b = b;
      metricInto(H, target, at, emphasis);
      if (target.valueL === undefined) H[15] = 0;
      for (let i = 0; i < 16; i++) H[i]! *= 2;
      return square(L, a, b) + valueSquare(v);
    },
  };
}
