/**
 * A film of finite thickness over a backing: P. Kubelka, "New Contributions to the Optics of Intensely
 * Light-Scattering Materials, Part I", J. Opt. Soc. Am. 38 (1948) 448-457.
 *   R = [1 - Rg(a - b coth bSX)] / [a - Rg + b coth bSX],  a = 1 + K/S,  b = sqrt(a^2 - 1).
 * Written here with k = KX, s = SX, u = bSX = sqrt(k(k + 2s)), w = u coth u, v = (u/sinh u)^2, which multiplies
 * numerator and denominator by s and stays finite for k = 0, s = 0 and thick films alike:
 *   R = [s - Rg p] / [k + s + w - s Rg],  p = k + s - w = (s^2 - v)/(k + s + w).
 * All reflectances are INTERNAL. K and S per unit of X, any unit.
 */
import { say } from '../palette-sentences.ts';

/** Reflectance of a film and its slopes. */
export interface FilmReflectance {
  /** Internal reflectance over the backing. */
  readonly R: number;
  readonly dK: number;
  readonly dS: number;
  /** Per unit of ln X. */
  readonly dLnX: number;
  /** By the backing's internal reflectance. */
  readonly dRg: number;
}

/** Above this u the backing cannot be seen in double precision: exp(-2u) is under 1e-250. */
const OPAQUE_U = 300;
/** Below this u^2 the series is exact to double precision. */
const SERIES_U2 = 1e-4;

/** w = u coth u, v = (u/sinh u)^2 and dw/d(u^2), from y = u^2 >= 0. */
function hyperbolic(y: number): { w: number; v: number; slope: number } {
  if (y < SERIES_U2) {
    const w = 1 + y * (1 / 3 + y * (-1 / 45 + (y * 2) / 945));
    const slope = 1 / 3 + y * (-2 / 45 + (y * 2) / 315);
    return { w, v: w - 2 * y * slope, slope };
  }
  const u = Math.sqrt(y);
  if (u > OPAQUE_U) return { w: u, v: 0, slope: 0.5 / u };
  const e = Math.exp(-2 * u);
  const w = (u * (1 + e)) / (1 - e);
  const v = (4 * y * e) / ((1 - e) * (1 - e));
  return { w, v, slope: (w - v) / (2 * y) };
}

/** Reflectance over a backing Rg (internal, 0..1) with derivatives. K, S, X >= 0. */
export function filmReflectance(K: number, S: number, X: number, Rg: number): FilmReflectance {
  const k = K * X;
  const s = S * X;
  const { w, v, slope } = hyperbolic(k * (k + 2 * s));
  const sum = k + s + w;
  const p = (s * s - v) / sum;
  const N = s - Rg * p;
  const D = sum - s * Rg;
  const R = N / D;
  const wk = slope * 2 * (k + s);
  const ws = slope * 2 * k;
  const dk = (-Rg * (1 - wk) - R * (1 + wk)) / D;
  const ds = (1 - Rg * (1 - ws) - R * (1 + ws - Rg)) / D;
  return { R, dK: X * dk, dS: X * ds, dLnX: k * dk + s * ds, dRg: v / (D * D) };
}

/** Reflectance over an ideal black, and transmittance: R0 and T of the same paper. */
export function filmOverNothing(K: number, S: number, X: number): { R0: number; T: number } {
  const k = K * X;
  const s = S * X;
  const { w, v } = hyperbolic(k * (k + 2 * s));
  const sum = k + s + w;
  return { R0: s / sum, T: Math.sqrt(v) / sum };
}

/**
 * a = 1 + K/S, SX and KX from one film over two backings, all reflectances internal (Kubelka 1948, and with an ideal
 * black the same equations at Rgb = 0).
 * @throws RangeError where the pair fits no film: backings that agree, a film that hides, readings out of order.
 */
export function filmFromTwoBackings(over: {
  readonly black: { readonly Rg: number; readonly R: number };
  readonly white: { readonly Rg: number; readonly R: number };
}): { a: number; SX: number; KX: number } {
  const { Rg: gb, R: b } = over.black;
  const { Rg: gw, R: w } = over.white;
  const divisor = 2 * (b * gw - w * gb);
  const a = ((1 + w * gw) * (b - gb) - (1 + b * gb) * (w - gw)) / divisor;
  const root = Math.sqrt(a * a - 1);
  const argument = (1 - a * (b + gb) + b * gb) / (root * (b - gb));
  if (!(divisor !== 0 && a > 1 && argument > 1 && w > b)) {
    throw new RangeError(say('no-single-film', { black: b, overBlack: gb, white: w, overWhite: gw }));
  }
  const SX = Math.atanh(1 / argument) / root;
  return { a, SX, KX: (a - 1) * SX };
}
