/**
 * The inner loop of every search: amounts of tubes to a colour, and the slopes of that colour, on plain arrays and
 * without allocating.
 *
 * Two-constant Kubelka-Munk (D. R. Duncan, Proc. Phys. Soc. 52 (1940) 390-401) through the surface equation
 * (J. L. Saunderson, J. Opt. Soc. Am. 32 (1942) 727-736), with K = sum x_i K_i, S = sum x_i S_i, root = sqrt(K(K+2S)):
 *   R = S/(K + S + root),  R_m = floor + gain R/(1 - k2 R) = floor + gain S/(K + (1-k2) S + root),
 * one square root and one division a wavelength. R_m is of degree 0 in (K, S), so that
 *   K dR_m/dK + S dR_m/dS = 0,  and with E = K + (1-k2) S + root
 *   dR_m/dx_i = gain t (S K_i - K S_i),  t = -(K + S + root)/(E^2 root).
 *
 * Tubes are taken four at a time, the sums written out up to twelve; a tube that is missing from a four has K = S = 0.
 * What crowding adds (crowding.ts) stands after the tubes as one more, which scatters as the white does and absorbs
 * nothing.
 */
import { GRID_SIZE } from '../colour/grid.ts';
import { labF } from '../colour/lab.ts';
import { extraWhite, extraWhiteSlopes } from './crowding.ts';
import type { TubeSet } from './tube-set.ts';

/** L, a, b under the set's white, then L* under C/2deg, which stands for Munsell value: one rises with the other. */
export const CHANNELS = 4;
/** Place of L* under C/2deg among the channels. */
export const VALUE_CHANNEL = 3;

const FOUR = 4;
/** Own copies: some loaders turn an imported name into a property look-up, which a loop this tight would feel. */
const SAMPLES = GRID_SIZE;
const toF = labF;

export interface MixKernel {
  /** The colour last asked for, four channels. */
  readonly u: Float64Array;
  /** d(channel)/dx of the colour last asked for with slopes: channel by channel, as many numbers each as tubes chosen. */
  readonly J: Float64Array;
  /** Chooses the tubes (indices into the set) that the next amounts are of. */
  choose(tubes: ArrayLike<number>): void;
  /** Colour of amounts in effective parts, in the order chosen. Degree 0: only ratios count. */
  colour(x: Float64Array): void;
  /** The same, so that its slopes may be asked for afterwards. */
  colourForSlopes(x: Float64Array): void;
  /** Slopes of the colour last asked for by `colourForSlopes`. */
  slopes(): void;
  /** Colour and slopes. */
  colourAndSlopes(x: Float64Array): void;
}

const SLOPE_AT_DARK = 1 / (3 * (6 / 29) ** 2);
/** CIELAB's df/dt from f itself: 1/(3 f^2) above (6/29)^3, the straight part's slope below. */
function slopeOfF(f: number): number {
  return f > 6 / 29 ? 1 / (3 * f * f) : SLOPE_AT_DARK;
}

/**
 * A kernel with its own scratch arrays; two interleaved searches need two.
 * Captured arrays are copied to locals at the top of each loop: read through the closure they cost twice the time.
 */
export function mixKernel(set: TubeSet): MixKernel {
  const { gain, k2 } = set.surface;
  const rest = 1 - k2;
  const { crowding } = set;
  const widest = FOUR * Math.ceil((set.ids.length + (crowding ? 1 : 0)) / FOUR);
  const u = new Float64Array(CHANNELS);
  const f = new Float64Array(CHANNELS);
  const J = new Float64Array(CHANNELS * widest);
  /** A record a wavelength: K of `pad` tubes, S of `pad` tubes, four weights. */
  const packed = new Float64Array(SAMPLES * (2 * widest + CHANNELS));
  /** By wavelength what slopes are made of: t S and t K. */
  const byK = new Float64Array(SAMPLES);
  const byS = new Float64Array(SAMPLES);
  /** Amounts, with zeros for the tubes that pad the record. */
  const amounts = new Float64Array(widest);
  /** The tubes chosen; with crowding, slopes with the extra white's after them, and dE/dx. */
  const own = new Int32Array(set.ids.length);
  let chosen = own.subarray(0, 0);
  const withExtra = new Float64Array(crowding ? CHANNELS * widest : 0);
  const more = new Float64Array(set.ids.length);
  const crowded = new Float64Array(crowding ? set.ids.length : 0);
  let m = 0;
  let pad = 0;

  const { K: allK, S: allS, weights } = set;
  const layOut = (to: number): void => {
    pad = to;
    for (let i = 0; i < SAMPLES; i++) {
      for (let c = 0; c < CHANNELS; c++) packed[i * (2 * pad + CHANNELS) + 2 * pad + c] = weights[c]![i]!;
    }
  };
  const put = (j: number, tube: number): void => {
    const P = packed;
    const K = allK;
    const S = allS;
    const by = pad;
    const step = 2 * by + 4;
    const from = tube * SAMPLES;
    for (let i = 0, p = j; i < SAMPLES; i++, p += step) {
      P[p] = K[from + i]!;
      P[p + by] = S[from + i]!;
    }
  };
  const clear = (j: number): void => {
    const P = packed;
    const step = 2 * pad + 4;
    for (let p = j, i = 0; i < SAMPLES; i++, p += step) P[p] = P[p + pad] = 0;
  };
  const alreadyChosen = (tubes: ArrayLike<number>): boolean => {
    if (tubes.length !== m) return false;
    for (let j = 0; j < m; j++) if (own[j] !== tubes[j]) return false;
    return true;
  };
  const choose = (tubes: ArrayLike<number>): void => {
    if (alreadyChosen(tubes)) return;
    m = tubes.length;
    for (let j = 0; j < m; j++) own[j] = tubes[j]!;
    const to = FOUR * Math.ceil((m + (crowding ? 1 : 0)) / FOUR);
    if (to !== pad) layOut(to);
    for (let j = 0; j < m; j++) put(j, tubes[j]!);
    for (let j = m; j < pad; j++) clear(j);
    if (crowding) {
      chosen = own.subarray(0, m);
      for (let i = 0; i < SAMPLES; i++) packed[i * (2 * pad + CHANNELS) + pad + m] = crowding.whiteS[i]!;
    }
    amounts.fill(0);
  };

  const toChannels = (X: number, Y: number, Z: number, V: number): void => {
    const { dark } = set;
    const fx = toF(dark[0] + gain * X);
    const fy = toF(dark[1] + gain * Y);
    const fz = toF(dark[2] + gain * Z);
    const fv = toF(dark[3] + gain * V);
    f[0] = fx;
    f[1] = fy;
    f[2] = fz;
    f[3] = fv;
    u[0] = 116 * fy - 16;
    u[1] = 500 * (fx - fy);
    u[2] = 200 * (fy - fz);
    u[3] = 116 * fv - 16;
  };

  /** The colour and, where asked, what its slopes are made of. */
  const evaluate = (x: Float64Array, withSlopes: boolean): void => {
    const P = packed;
    const tS = byK;
    const tK = byS;
    const k = rest;
    const count = m;
    const by = pad;
    const step = 2 * by + 4;
    const end = SAMPLES * step;
    const y = amounts;
    for (let j = 0; j < count; j++) y[j] = x[j]!;
    if (crowding) {
      y[count] = extraWhite(set, chosen, x);
      if (withSlopes) for (let j = 0; j < count; j++) crowded[j] = x[j]!;
    }
    const y0 = y[0]!;
    const y1 = y[1]!;
    const y2 = y[2]!;
    const y3 = y[3]!;
    const second = by > 4;
    const third = by > 8;
    const y4 = second ? y[4]! : 0;
    const y5 = second ? y[5]! : 0;
    const y6 = second ? y[6]! : 0;
    const y7 = second ? y[7]! : 0;
    const y8 = third ? y[8]! : 0;
    const y9 = third ? y[9]! : 0;
    const y10 = third ? y[10]! : 0;
    const y11 = third ? y[11]! : 0;
    let X = 0;
    let Y = 0;
    let Z = 0;
    let V = 0;
    for (let p = 0, i = 0; p < end; p += step, i++) {
      const s = p + by;
      let K = y0 * P[p]! + y1 * P[p + 1]! + y2 * P[p + 2]! + y3 * P[p + 3]!;
      let S = y0 * P[s]! + y1 * P[s + 1]! + y2 * P[s + 2]! + y3 * P[s + 3]!;
      if (second) {
        K += y4 * P[p + 4]! + y5 * P[p + 5]! + y6 * P[p + 6]! + y7 * P[p + 7]!;
        S += y4 * P[s + 4]! + y5 * P[s + 5]! + y6 * P[s + 6]! + y7 * P[s + 7]!;
        if (third) {
          K += y8 * P[p + 8]! + y9 * P[p + 9]! + y10 * P[p + 10]! + y11 * P[p + 11]!;
          S += y8 * P[s + 8]! + y9 * P[s + 9]! + y10 * P[s + 10]! + y11 * P[s + 11]!;
          for (let j = 12; j < by; j++) {
            K += y[j]! * P[p + j]!;
            S += y[j]! * P[s + j]!;
          }
        }
      }
      const root = Math.sqrt(K * (K + 2 * S));
      const E = K + k * S + root;
      const g = S / E;
      if (withSlopes) {
        const t = -(root + K + S) / (E * E * root);
        tS[i] = t * S;
        tK[i] = t * K;
      }
      const w = s + by;
      X += P[w]! * g;
      Y += P[w + 1]! * g;
      Z += P[w + 2]! * g;
      V += P[w + 3]! * g;
    }
    toChannels(X, Y, Z, V);
  };

  /** Slopes of the channels by tube j, from those of X, Y, Z, V and of their f. */
  const slopesOf = (
    j: number,
    gx: number,
    gy: number,
    gz: number,
    gv: number,
    dx: number,
    dy: number,
    dz: number,
    dv: number,
  ): void => {
    const out = crowding ? withExtra : J;
    const by = crowding ? m + 1 : m;
    out[j] = 116 * gy * dy;
    out[by + j] = 500 * (gx * dx - gy * dy);
    out[2 * by + j] = 200 * (gy * dy - gz * dz);
    out[3 * by + j] = 116 * gv * dv;
  };

  const slopes = (): void => {
    const P = packed;
    const tS = byK;
    const tK = byS;
    const tubes = m;
    const count = crowding ? tubes + 1 : tubes;
    const by = pad;
    const step = 2 * by + 4;
    const end = SAMPLES * step;
    const gx = gain * slopeOfF(f[0]!);
    const gy = gain * slopeOfF(f[1]!);
    const gz = gain * slopeOfF(f[2]!);
    const gv = gain * slopeOfF(f[3]!);
    // Two tubes at a time: eight running sums are as many as the processor keeps at hand.
    for (let j = 0; j < count; j += 2) {
      let x0 = 0;
      let y0 = 0;
      let z0 = 0;
      let v0 = 0;
      let x1 = 0;
      let y1 = 0;
      let z1 = 0;
      let v1 = 0;
      for (let p = 0, i = 0; p < end; p += step, i++) {
        const ofK = tS[i]!;
        const ofS = tK[i]!;
        const at = p + j;
        const h0 = ofK * P[at]! - ofS * P[at + by]!;
        const h1 = ofK * P[at + 1]! - ofS * P[at + by + 1]!;
        const w = p + 2 * by;
        const wx = P[w]!;
        const wy = P[w + 1]!;
        const wz = P[w + 2]!;
        const wv = P[w + 3]!;
        x0 += h0 * wx;
        y0 += h0 * wy;
        z0 += h0 * wz;
        v0 += h0 * wv;
        x1 += h1 * wx;
        y1 += h1 * wy;
        z1 += h1 * wz;
        v1 += h1 * wv;
      }
      slopesOf(j, gx, gy, gz, gv, x0, y0, z0, v0);
      if (j + 1 < count) slopesOf(j + 1, gx, gy, gz, gv, x1, y1, z1, v1);
    }
    if (crowding) {
      extraWhiteSlopes(set, chosen, crowded, more);
      for (let ch = 0; ch < CHANNELS; ch++) {
        const byExtra = withExtra[ch * count + tubes]!;
        for (let j = 0; j < tubes; j++) J[ch * tubes + j] = withExtra[ch * count + j]! + more[j]! * byExtra;
      }
    }
  };

  return {
    u,
    J,
    choose,
    colour: (x) => evaluate(x, false),
    colourForSlopes: (x) => evaluate(x, true),
    slopes,
    colourAndSlopes(x) {
      evaluate(x, true);
      slopes();
    },
  };
}
