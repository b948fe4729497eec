import { ciede2000Steps } from '../colour/ciede2000.ts';
import { DEFAULT_WHITE, type WhiteName } from '../colour/illuminant.ts';
import { type Lab, labJacobian, labOfReflectance } from '../colour/lab.ts';
import type { TristimulusWeights } from '../colour/xyz.ts';
import { tristimulusWeights } from '../colour/tristimulus.ts';

/** 95 % of a chi-square with three degrees of freedom (any table of the distribution). */
export const CHI_SQUARE_3_95 = 7.815;
/** One-sided 95 % of the normal distribution. */
const NORMAL_95 = 1.645;

/** A predicted colour and the region that holds the truth 95 times in 100. */
export interface LabRegion {
  readonly lab: Lab;
  /** Covariance of (L, a, b), row by row. */
  readonly covariance: readonly [readonly number[], readonly number[], readonly number[]];
  /** Squared Mahalanobis distance of a colour from the prediction. */
  distanceSquared(lab: Pick<Lab, 'L' | 'a' | 'b'>): number;
  /** Whether a colour lies in the 95 % region. */
  contains(lab: Pick<Lab, 'L' | 'a' | 'b'>): boolean;
  /** CIEDE2000 that the truth stays under 95 times in 100. */
  readonly radius: number;
}

/** The region of a reflectance (on the grid, or at the wavelengths of `weights`) whose covariance is F F^T. */
export function labRegion(
  reflectance: Float64Array,
  factor: readonly Float64Array[],
  white: WhiteName = DEFAULT_WHITE,
  weights: TristimulusWeights = tristimulusWeights(white),
): LabRegion {
  const lab = labOfReflectance(reflectance, weights);
  const J = labJacobian(reflectance, weights);
  const C = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ] as [number[], number[], number[]];
  for (const column of factor) {
    const g = J.map((row) => row.reduce((sum, d, i) => sum + d * column[i]!, 0));
    for (let r = 0; r < 3; r++) for (let c = 0; c < 3; c++) C[r]![c]! += g[r]! * g[c]!;
  }
  const distanceSquared = (other: Pick<Lab, 'L' | 'a' | 'b'>): number =>
    solve3(C, [other.L - lab.L, other.a - lab.a, other.b - lab.b]);
  return {
    lab,
    covariance: C,
    distanceSquared,
    contains: (other) => distanceSquared(other) <= CHI_SQUARE_3_95,
    radius: radiusOf(lab, C),
  };
}

/** d^T C^-1 d; a covariance without doubt in some direction holds only its own plane. */
function solve3(C: readonly (readonly number[])[], d: readonly number[]): number {
  const L = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ];
  const y = [0, 0, 0];
  let sum = 0;
  for (let r = 0; r < 3; r++) {
    for (let c = 0; c <= r; c++) {
      let v = C[r]![c]!;
      for (let k = 0; k < c; k++) v -= L[r]![k]! * L[c]![k]!;
      if (r === c) L[r]![r] = Math.sqrt(Math.max(v, 1e-18));
      else L[r]![c] = v / L[c]![c]!;
    }
    let v = d[r]!;
    for (let k = 0; k < r; k++) v -= L[r]![k]! * y[k]!;
    const z = v / L[r]![r]!;
    y[r] = z;
    sum += z * z;
  }
  return sum;
}

/**
 * CIEDE2000 that the truth stays under 95 times in 100, for a colour whose covariance in (L, a, b) is C.
 * dE00^2 is a quadratic form d^T G d near the prediction; its mean and variance over the normal d are tr(GC) and
 * 2 tr(GCGC), matched by a scaled chi-square (F. E. Satterthwaite, Biometrics Bulletin 2 (1946) 110-114) whose 95 %
 * point is taken from Wilson and Hilferty's cube root (Proc. Natl. Acad. Sci. 17 (1931) 684-688).
 */
export function radiusOf(lab: Lab, C: readonly (readonly number[])[]): number {
  const G = localMetric(lab);
  const GC = G.map((row) => [0, 1, 2].map((c) => row.reduce((sum, g, k) => sum + g * C[k]![c]!, 0)));
  const mean = GC[0]![0]! + GC[1]![1]! + GC[2]![2]!;
  if (!(mean > 0)) return 0;
  let square = 0;
  for (let r = 0; r < 3; r++) for (let c = 0; c < 3; c++) square += GC[r]![c]! * GC[c]![r]!;
  const nu = (mean * mean) / square;
  const point = nu * (1 - 2 / (9 * nu) + NORMAL_95 * Math.sqrt(2 / (9 * nu))) ** 3;
  return Math.sqrt((mean / nu) * point);
}

/** Mean of CIEDE2000 squared over that covariance: tr(GC). Parts of a covariance have parts of it. */
export function meanSquareOf(lab: Lab, C: readonly (readonly number[])[]): number {
  return localMetric(lab).reduce((sum, row, r) => sum + row.reduce((s, g, c) => s + g * C[r]![c]!, 0), 0);
}

/** G of dE00^2 = d^T G d, by polarisation of small steps. */
function localMetric(lab: Lab): number[][] {
  const h = 1e-3;
  const square = (d: readonly number[]): number =>
    (ciede2000Steps(lab, { L: lab.L + h * d[0]!, a: lab.a + h * d[1]!, b: lab.b + h * d[2]! }).dE00 / h) ** 2;
  const axis = (i: number, j = i): number[] => [0, 1, 2].map((k) => (k === i || k === j ? 1 : 0));
  const diagonal = [0, 1, 2].map((i) => square(axis(i)));
  return [0, 1, 2].map((i) =>
    [0, 1, 2].map((j) => (i === j ? diagonal[i]! : (square(axis(i, j)) - diagonal[i]! - diagonal[j]!) / 2)),
  );
}
