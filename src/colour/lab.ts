/**
 * CIELAB: ISO/CIE 11664-4, "Colorimetry - Part 4: CIE 1976 L*a*b* colour space".
 * f(t) = t^(1/3) for t > (6/29)^3, else (841/108) t + 4/29.
 */
import type { WhiteName } from './illuminant.ts';
import { type TristimulusWeights, type Xyz, xyzOf } from './xyz.ts';
import { whitePoint } from './white-point.ts';

/** A CIELAB colour. It carries the white it is relative to: a Lab under D50 is not a Lab under D65. */
export interface Lab<W extends WhiteName = WhiteName> {
  readonly L: number;
  readonly a: number;
  readonly b: number;
  readonly white: W;
}

const DELTA = 6 / 29;

/** CIELAB's f, for t = X/Xn. Odd extension below zero is the straight part. */
export function labF(t: number): number {
  return t > DELTA ** 3 ? Math.cbrt(t) : t / (3 * DELTA ** 2) + 4 / 29;
}

/** df/dt, for derivatives of Lab. */
export function labFSlope(t: number): number {
  return t > DELTA ** 3 ? 1 / (3 * Math.cbrt(t) ** 2) : 1 / (3 * DELTA ** 2);
}

function labFInverse(f: number): number {
  return f > DELTA ? f ** 3 : 3 * DELTA ** 2 * (f - 4 / 29);
}

export function labOf<W extends WhiteName>(xyz: Xyz<W>): Lab<W> {
  const n = whitePoint(xyz.white);
  const fx = labF(xyz.X / n.X);
  const fy = labF(xyz.Y / n.Y);
  const fz = labF(xyz.Z / n.Z);
  return { L: 116 * fy - 16, a: 500 * (fx - fy), b: 200 * (fy - fz), white: xyz.white };
}

export function xyzFromLab<W extends WhiteName>(lab: Lab<W>): Xyz<W> {
  const n = whitePoint(lab.white);
  const fy = (lab.L + 16) / 116;
  return {
    X: n.X * labFInverse(fy + lab.a / 500),
    Y: n.Y * labFInverse(fy),
    Z: n.Z * labFInverse(fy - lab.b / 200),
    white: lab.white,
  };
}

/** Reflectance straight to Lab. */
export function labOfReflectance<W extends WhiteName>(
  reflectance: ArrayLike<number>,
  weights: TristimulusWeights<W>,
): Lab<W> {
  return labOf(xyzOf(reflectance, weights));
}

/** Chroma C*ab. */
export function chroma(lab: Pick<Lab, 'a' | 'b'>): number {
  return Math.hypot(lab.a, lab.b);
}

/** Hue angle h_ab in degrees, 0 up to (not including) 360; 0 for a neutral. */
export function hueDegrees(lab: Pick<Lab, 'a' | 'b'>): number {
  const h = (Math.atan2(lab.b, lab.a) * 180) / Math.PI;
  return h < 0 ? h + 360 : h;
}

/**
 * dLab/dR for a reflectance sampled where the weights are: three rows (L, a, b) of one number per wavelength.
 * Used to carry a spectral covariance into a colour.
 */
export function labJacobian(
  reflectance: ArrayLike<number>,
  weights: TristimulusWeights,
): [Float64Array, Float64Array, Float64Array] {
  const xyz = xyzOf(reflectance, weights);
  const n = whitePoint(weights.white);
  const sx = labFSlope(xyz.X / n.X) / n.X;
  const sy = labFSlope(xyz.Y / n.Y) / n.Y;
  const sz = labFSlope(xyz.Z / n.Z) / n.Z;
  const size = reflectance.length;
  const dL = new Float64Array(size);
  const da = new Float64Array(size);
  const db = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    const fx = sx * weights.x[i]!;
    const fy = sy * weights.y[i]!;
    const fz = sz * weights.z[i]!;
    dL[i] = 116 * fy;
    da[i] = 500 * (fx - fy);
    db[i] = 200 * (fy - fz);
  }
  return [dL, da, db];
}
