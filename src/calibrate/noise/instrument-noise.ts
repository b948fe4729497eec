/**
 * The noise of one reading from repeats: variance = sigma^2 + (relative x R)^2. Each group of repeats gives, per
 * channel, a variance with n - 1 degrees of freedom at a mean R; the two parts follow by weighted least squares, the
 * weights being the inverse variance of a sample variance, 2 v^2 / (n - 1) (normal readings), taken afresh each round.
 */
import { ReadingRefused } from '../refusal.ts';
import { say } from '../repeats/sentences.ts';

export interface InstrumentNoise {
  /** Absolute part, reflectance factor. */
  readonly sigma: number;
  /** Part in proportion to the reading. */
  readonly relative: number;
  /** Degrees of freedom behind the two. */
  readonly degreesOfFreedom: number;
}

const ROUNDS = 30;
/** Below this a spread is taken for the head's rounding, so that one group of equal repeats does not rule. */
const FLOOR = 1e-5;

/**
 * @param groups repeats of one swatch, card or tile each: readings by channel
 * @throws ReadingRefused `too-few` when no group has two readings
 */
export function estimateNoise(groups: readonly (readonly ArrayLike<number>[])[]): InstrumentNoise {
  const points: { x: number; v: number; dof: number }[] = [];
  let degreesOfFreedom = 0;
  for (const group of groups) {
    const n = group.length;
    if (n < 2) continue;
    const size = group[0]!.length;
    degreesOfFreedom += (n - 1) * size;
    for (let c = 0; c < size; c++) {
      const mean = group.reduce((s, r) => s + r[c]!, 0) / n;
      const v = group.reduce((s, r) => s + (r[c]! - mean) ** 2, 0) / (n - 1);
      points.push({ x: mean * mean, v, dof: n - 1 });
    }
  }
  if (points.length === 0) {
    throw new ReadingRefused('too-few', say('noise-from-repeats'));
  }
  let [zero, slope] = [
    points.reduce((s, p) => s + p.v * p.dof, 0) / points.reduce((s, p) => s + p.dof, 0),
    0,
  ];
  for (let round = 0; round < ROUNDS; round++) {
    let [w, wx, wxx, wv, wxv] = [0, 0, 0, 0, 0];
    for (const { x, v, dof } of points) {
      const weight = dof / Math.max(FLOOR ** 2, zero + slope * x) ** 2;
      w += weight;
      wx += weight * x;
      wxx += weight * x * x;
      wv += weight * v;
      wxv += weight * x * v;
    }
    const det = w * wxx - wx * wx;
    const line =
      det > 1e-12 * w * wxx
        ? { zero: (wxx * wv - wx * wxv) / det, slope: (w * wxv - wx * wv) / det }
        : undefined;
    if (line && line.zero >= 0 && line.slope >= 0) ({ zero, slope } = line);
    else if (line && line.zero < 0) [zero, slope] = [0, wxv / wxx];
    else [zero, slope] = [wv / w, 0];
  }
  return { sigma: Math.sqrt(Math.max(zero, FLOOR ** 2)), relative: Math.sqrt(slope), degreesOfFreedom };
}
