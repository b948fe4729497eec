/**
 * CIEDE2000 squared about one wanted colour, with its exact slopes by the other: the same formula as
 * src/colour/ciede2000.ts (G. Sharma, W. Wu, E. N. Dalal, Color Research and Application 30 (2005) 21-30, equations (2)
 * to (22), whose symbols are kept), differentiated by hand and without the angles a search does not need.
 *
 * With e1, e2 the unit vectors at h1', h2': the mean hue is the direction of e1 + e2, |e1 - e2| = 2 |sin(dh'/2)|, and the
 * sign of dh' is that of e1 x e2. Sines and cosines of its multiples follow from those of the mean hue itself, and only
 * equation (16), which looks at blues, needs it in degrees.
 *
 * A suffix of _a or _b is the slope by a* or b* of the second colour. Where a colour has no chroma the formula has a
 * corner; slopes there are those of a point a hundred-thousandth of a unit away.
 */

/** How much each part of a difference counts; 1, 1, 1 is CIEDE2000 itself. */
export interface PartWeights {
  readonly lightness: number;
  readonly chroma: number;
  readonly hue: number;
}

export interface DifferenceAbout {
  /** Squared difference of (L, a, b) from the wanted colour, its parts weighted. */
  square(L: number, a: number, b: number): number;
  /** The same, with its slopes into g[0..2] and, from where it was taken, into `at`. */
  squareAndSlopes(L: number, a: number, b: number, g: Float64Array): number;
  /** What the metric about the pair last asked for with slopes is made of. */
  readonly at: { G: number; a2p: number; a1p: number; SL: number; SC: number; SH: number; RT: number };
}

const RAD = Math.PI / 180;
const COS_6 = Math.cos(6 * RAD);
const SIN_6 = Math.sin(6 * RAD);
const COS_30 = Math.cos(30 * RAD);
const SIN_30 = Math.sin(30 * RAD);
const COS_63 = Math.cos(63 * RAD);
const SIN_63 = Math.sin(63 * RAD);
const POW_25_7 = 25 ** 7;
/** Beyond this many degrees from 275, exp of equation (16) is under 1e-15. */
const BLUES = 150;
/** Hues nearer to opposite than this (radians) have the mean that equation (14) gives to those 180 degrees apart. */
const OPPOSITE = 1e-12;
/** Chroma under which slopes are taken as if it were this. */
const NO_CHROMA = 1e-5;

function seventh(c: number): number {
  const c2 = c * c;
  return c2 * c2 * c2 * c;
}

/** sqrt(c^7 / (c^7 + 25^7)), of equations (4) and (17). */
function rootOfSeventh(c: number): number {
  const c7 = seventh(c);
  return Math.sqrt(c7 / (c7 + POW_25_7));
}

export function differenceAbout(
  wanted: { readonly L: number; readonly a: number; readonly b: number },
  weights: PartWeights,
): DifferenceAbout {
  const { L: L1, a: a1, b: b1 } = wanted;
  const { lightness: eL, chroma: eC, hue: eH } = weights;
  const C1 = Math.sqrt(a1 * a1 + b1 * b1);
  const at = { G: 0, a1p: 0, a2p: 0, SL: 1, SC: 1, SH: 1, RT: 0 };

  /** Slopes are worked out only where `g` is given. */
  const squareOf = (L2: number, a2: number, b2: number, g: Float64Array | undefined): number => {
    const C2 = Math.sqrt(a2 * a2 + b2 * b2);
    const Cbar = (C1 + C2) / 2;
    const root = rootOfSeventh(Cbar);
    const G = 0.5 * (1 - root);
    const a1p = (1 + G) * a1;
    const a2p = (1 + G) * a2;
    const C1p = Math.sqrt(a1p * a1p + b1 * b1);
    const C2p = Math.sqrt(a2p * a2p + b2 * b2);
    const dLp = L2 - L1;
    const dCp = C2p - C1p;
    // Directions of both hues; a colour without chroma takes the other's.
    const cos1 = C1p > 0 ? a1p / C1p : C2p > 0 ? a2p / C2p : 1;
    const sin1 = C1p > 0 ? b1 / C1p : C2p > 0 ? b2 / C2p : 0;
    const cos2 = C2p > 0 ? a2p / C2p : cos1;
    const sin2 = C2p > 0 ? b2 / C2p : sin1;
    const sum = Math.sqrt((cos1 + cos2) * (cos1 + cos2) + (sin1 + sin2) * (sin1 + sin2));
    const apart = Math.sqrt((cos1 - cos2) * (cos1 - cos2) + (sin1 - sin2) * (sin1 - sin2));
    const sinHalf = cos1 * sin2 - sin1 * cos2 < 0 ? -apart / 2 : apart / 2;
    const cosHalf = sum / 2;
    const q = Math.sqrt(C1p * C2p);
    const dHp = 2 * q * sinHalf;
    // The mean hue and its multiples.
    const across = sin1 < 0 ? -1 : 1;
    const c1 = sum > OPPOSITE ? (cos1 + cos2) / sum : -across * sin1;
    const s1 = sum > OPPOSITE ? (sin1 + sin2) / sum : across * cos1;
    const c2 = c1 * c1 - s1 * s1;
    const s2 = 2 * s1 * c1;
    const c3 = c2 * c1 - s2 * s1;
    const s3 = s2 * c1 + c2 * s1;
    const c4 = c2 * c2 - s2 * s2;
    const s4 = 2 * s2 * c2;
    const T =
      1 -
      0.17 * (c1 * COS_30 + s1 * SIN_30) +
      0.24 * c2 +
      0.32 * (c3 * COS_6 - s3 * SIN_6) -
      0.2 * (c4 * COS_63 + s4 * SIN_63);
    const degrees = Math.atan2(s1, c1) / RAD;
    const off = (degrees < 0 ? degrees + 360 : degrees) - 275;
    const dTheta = Math.abs(off) < BLUES ? 30 * Math.exp(-((off / 25) * (off / 25))) : 0;
    const turn = dTheta === 0 ? 0 : Math.sin(2 * dTheta * RAD);
    const Cbarp = (C1p + C2p) / 2;
    const rootp = rootOfSeventh(Cbarp);
    const l50 = (L1 + L2) / 2 - 50;
    const under = Math.sqrt(20 + l50 * l50);
    const SL = 1 + (0.015 * l50 * l50) / under;
    const SC = 1 + 0.045 * Cbarp;
    const SH = 1 + 0.015 * Cbarp * T;
    const RT = -2 * turn * rootp;
    const l = (eL * dLp) / SL;
    const c = (eC * dCp) / SC;
    const h = (eH * dHp) / SH;
    if (g !== undefined) {
      at.G = G;
      at.a1p = a1p;
      at.a2p = a2p;
      at.SL = SL;
      at.SC = SC;
      at.SH = SH;
      at.RT = RT;
      const SL_L = (0.0075 * l50 * (40 + l50 * l50)) / (under * under * under);
      g[0] = (2 * l * (eL - l * SL_L)) / SL;
      const D2 = Math.max(C2, NO_CHROMA);
      const D1p = Math.max(C1p, NO_CHROMA);
      const D2p = Math.max(C2p, NO_CHROMA);
      const Dq = Math.max(q, NO_CHROMA);
      // dG/dC2, then slopes by a and by b in turn.
      const G_C = (-0.875 * root * (1 - root * root)) / Math.max(Cbar, NO_CHROMA);
      const T_h =
        0.17 * (s1 * COS_30 - c1 * SIN_30) -
        0.48 * s2 -
        0.96 * (s3 * COS_6 + c3 * SIN_6) +
        0.8 * (s4 * COS_63 - c4 * SIN_63);
      const turn_h = dTheta === 0 ? 0 : Math.cos(2 * dTheta * RAD) * 2 * dTheta * ((-2 * off) / 625);
      const rootp_C = (3.5 * rootp * (1 - rootp * rootp)) / Math.max(Cbarp, NO_CHROMA);
      for (let k = 0; k < 2; k++) {
        const G_k = (G_C * (k === 0 ? a2 : b2)) / D2;
        const a1p_k = a1 * G_k;
        const a2p_k = a2 * G_k + (k === 0 ? 1 + G : 0);
        const b2_k = k;
        const C1p_k = (a1p * a1p_k) / D1p;
        const C2p_k = (a2p * a2p_k + b2 * b2_k) / D2p;
        const h1_k = (-b1 * a1p_k) / (D1p * D1p);
        const h2_k = (a2p * b2_k - b2 * a2p_k) / (D2p * D2p);
        const hbar_k = C1p > 0 ? (h1_k + h2_k) / 2 : h2_k;
        const dHp_k = ((C1p_k * C2p + C1p * C2p_k) / Dq) * sinHalf + q * cosHalf * (h2_k - h1_k);
        const Cbarp_k = (C1p_k + C2p_k) / 2;
        const c_k = (eC * (C2p_k - C1p_k) - c * 0.045 * Cbarp_k) / SC;
        const h_k = (eH * dHp_k - h * 0.015 * (Cbarp_k * T + Cbarp * T_h * hbar_k)) / SH;
        const RT_k = -2 * (turn_h * hbar_k * rootp + turn * rootp_C * Cbarp_k);
        g[1 + k] = (2 * c + RT * h) * c_k + (2 * h + RT * c) * h_k + RT_k * c * h;
      }
    }
    return l * l + c * c + h * h + RT * c * h;
  };

  return {
    at,
    square: (L, a, b) => squareOf(L, a, b, undefined),
    squareAndSlopes: (L, a, b, g) => squareOf(L, a, b, g),
  };
}
