/**
 * CIEDE2000 colour difference: ISO/CIE 11664-6; written after G. Sharma, W. Wu, E. N. Dalal, "The CIEDE2000
 * Color-Difference Formula: Implementation Notes, Supplementary Test Data, and Mathematical Observations",
 * Color Research and Application 30 (2005) 21-30, equations (2) to (22), whose symbols are kept.
 * k_L = k_C = k_H = 1.
 */
import type { Lab } from './lab.ts';
import { say } from './sentences.ts';

/** Every intermediate of the paper's test table, so that a failing pair names the wrong step. */
export interface Ciede2000Steps {
  readonly a1p: number;
  readonly C1p: number;
  readonly h1p: number;
  readonly a2p: number;
  readonly C2p: number;
  readonly h2p: number;
  readonly hbar: number;
  readonly G: number;
  readonly T: number;
  readonly SL: number;
  readonly SC: number;
  readonly SH: number;
  readonly RT: number;
  readonly dE00: number;
}

type Colour = Pick<Lab, 'L' | 'a' | 'b'>;

const RAD = Math.PI / 180;
const POW_25_7 = 25 ** 7;

function hp(ap: number, b: number): number {
  if (ap === 0 && b === 0) return 0;
  const h = Math.atan2(b, ap) / RAD;
  return h < 0 ? h + 360 : h;
}

/** The difference with its intermediates. Angles in degrees. */
export function ciede2000Steps(one: Colour, two: Colour): Ciede2000Steps {
  const C1 = Math.hypot(one.a, one.b); // (2)
  const C2 = Math.hypot(two.a, two.b);
  const Cbar7 = ((C1 + C2) / 2) ** 7; // (3)
  const G = 0.5 * (1 - Math.sqrt(Cbar7 / (Cbar7 + POW_25_7))); // (4)
  const a1p = (1 + G) * one.a; // (5)
  const a2p = (1 + G) * two.a;
  const C1p = Math.hypot(a1p, one.b); // (6)
  const C2p = Math.hypot(a2p, two.b);
  const h1p = hp(a1p, one.b); // (7)
  const h2p = hp(a2p, two.b);

  const dLp = two.L - one.L; // (8)
  const dCp = C2p - C1p; // (9)
  let dhp = 0; // (10)
  if (C1p * C2p !== 0) {
    dhp = h2p - h1p;
    if (dhp > 180) dhp -= 360;
    else if (dhp < -180) dhp += 360;
  }
  const dHp = 2 * Math.sqrt(C1p * C2p) * Math.sin((dhp / 2) * RAD); // (11)

  const Lbar = (one.L + two.L) / 2; // (12)
  const Cbarp = (C1p + C2p) / 2; // (13)
  let hbar = h1p + h2p; // (14)
  if (C1p * C2p !== 0) {
    if (Math.abs(h1p - h2p) <= 180) hbar /= 2;
    else hbar = hbar < 360 ? (hbar + 360) / 2 : (hbar - 360) / 2;
  }
  const T =
    1 -
    0.17 * Math.cos((hbar - 30) * RAD) +
    0.24 * Math.cos(2 * hbar * RAD) +
    0.32 * Math.cos((3 * hbar + 6) * RAD) -
    0.2 * Math.cos((4 * hbar - 63) * RAD); // (15)
  const dTheta = 30 * Math.exp(-(((hbar - 275) / 25) ** 2)); // (16)
  const Cbarp7 = Cbarp ** 7;
  const RC = 2 * Math.sqrt(Cbarp7 / (Cbarp7 + POW_25_7)); // (17)
  const l50 = (Lbar - 50) ** 2;
  const SL = 1 + (0.015 * l50) / Math.sqrt(20 + l50); // (18)
  const SC = 1 + 0.045 * Cbarp; // (19)
  const SH = 1 + 0.015 * Cbarp * T; // (20)
  const RT = -Math.sin(2 * dTheta * RAD) * RC; // (21)
  const l = dLp / SL;
  const c = dCp / SC;
  const h = dHp / SH;
  const dE00 = Math.sqrt(l * l + c * c + h * h + RT * c * h); // (22)
  return { a1p, C1p, h1p, a2p, C2p, h2p, hbar, G, T, SL, SC, SH, RT, dE00 };
}

/**
 * CIEDE2000 between two colours under one white. 0 for equal colours; about 1 is just visible side by side.
 * @throws RangeError when the colours are relative to different whites.
 */
export function ciede2000(one: Lab, two: Lab): number {
  if (one.white !== two.white) {
    throw new RangeError(say('two-whites', { one: one.white, two: two.white }));
  }
  return ciede2000Steps(one, two).dE00;
}
