/**
 * Chandrasekhar's H-function for isotropic scattering: S. Chandrasekhar, "Radiative Transfer" (1950; Dover 1960),
 * chapter V. Solved in the form that also converges for a lossless medium,
 *
 *     1/H(mu) = sqrt(1 - w) + (w/2) int_0^1 mu' H(mu') / (mu + mu') dmu'
 *
 * which follows from his equation for H and the zeroth moment int H = (2/w)(1 - sqrt(1 - w)).
 */

/** H at the nodes and, through the equation itself, at any other cosine. */
export interface HFunction {
  readonly albedo: number;
  readonly atNodes: Float64Array;
  at(mu: number): number;
}

const STEPS = 2000;
const SETTLED = 1e-14;

/**
 * H for a single-scattering albedo `albedo` (0..1), with integrals taken on `mu`, `weights` (over 0..1).
 * @throws RangeError for an albedo outside 0..1.
 */
export function hFunction(albedo: number, mu: Float64Array, weights: Float64Array): HFunction {
  if (!(albedo >= 0 && albedo <= 1)) {
    throw new RangeError(`A single-scattering albedo lies between 0 and 1; ${albedo} was given.`);
  }
  const root = Math.sqrt(1 - albedo);
  const size = mu.length;
  let H = new Float64Array(size).fill(1);
  const inverse = (m: number): number => {
    let sum = 0;
    for (let j = 0; j < size; j++) sum += (weights[j]! * mu[j]! * H[j]!) / (m + mu[j]!);
    return root + (albedo / 2) * sum;
  };
  for (let step = 0; step < STEPS; step++) {
    const next = new Float64Array(size);
    let worst = 0;
    for (let i = 0; i < size; i++) {
      // The plain iteration swings from side to side; the mean of old and new settles in a few dozen steps.
      next[i] = (H[i]! + 1 / inverse(mu[i]!)) / 2;
      worst = Math.max(worst, Math.abs(next[i]! - H[i]!) / next[i]!);
    }
    H = next;
    if (worst < SETTLED) break;
  }
  return { albedo, atNodes: H, at: (m) => (m <= 0 ? 1 : 1 / inverse(m)) };
}
