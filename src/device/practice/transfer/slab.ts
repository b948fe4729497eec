/**
 * A layer of finite thickness by discrete ordinates: S. Chandrasekhar, "Radiative Transfer", chapter VI;
 * K. Stamnes and others, Appl. Opt. 27 (1988) 2502-2509. Isotropic scattering, fields averaged over azimuth.
 *
 * In the chosen directions the fields are sums of exp(-k tau), with k from 1 = w sum a_j / (1 - k^2 mu_j^2): one root
 * between every two poles. A layer lit alike (or contrariwise) from both sides needs the even (odd) sums alone, which
 * gives reflection plus (minus) transmission.
 */
import { Matrix, solve } from 'ml-matrix';

/** Radiance in to radiance out, per direction: `up` is thrown back, `through` comes out on the other side. */
export interface Slab {
  readonly up: Matrix;
  readonly through: Matrix;
}

/** Roots sit on poles for a layer that does not scatter, and two meet at 0 for one that does not absorb. */
const LEAST_ALBEDO = 1e-5;
const MOST_ALBEDO = 1 - 1e-10;

/** A layer of optical thickness `tau` (scattering and absorption together) and single-scattering albedo `albedo`. */
export function slab(albedo: number, tau: number, mu: Float64Array, weights: Float64Array): Slab {
  const n = mu.length;
  if (tau === 0) return { up: Matrix.zeros(n, n), through: Matrix.eye(n, n) };
  const k = decayRates(Math.min(MOST_ALBEDO, Math.max(LEAST_ALBEDO, albedo)), mu, weights);
  const both = (sign: 1 | -1): Matrix => {
    // One row per rate: entering[a][i] and leaving[a][i] at the lit side.
    const entering = Matrix.zeros(n, n);
    const leaving = Matrix.zeros(n, n);
    for (let a = 0; a < n; a++) {
      const far = sign * Math.exp(-k[a]! * tau);
      for (let i = 0; i < n; i++) {
        const down = 1 / (1 - k[a]! * mu[i]!);
        const up = 1 / (1 + k[a]! * mu[i]!);
        entering.set(a, i, down + far * up);
        leaving.set(a, i, up + far * down);
      }
    }
    return solve(entering, leaving).transpose();
  };
  const even = both(1);
  const odd = both(-1);
  return { up: Matrix.add(even, odd).mul(0.5), through: Matrix.sub(even, odd).mul(0.5) };
}

/** The k, by halving between the poles 1/mu, in the offset from the lower pole so that near ones keep their digits. */
function decayRates(albedo: number, mu: Float64Array, weights: Float64Array): Float64Array {
  const poles = [0, ...Array.from(mu, (m) => 1 / (m * m)).toSorted((a, b) => a - b)];
  const excess = (k2: number): number => {
    let sum = 0;
    for (let j = 0; j < mu.length; j++) sum += weights[j]! / (1 - k2 * mu[j]! * mu[j]!);
    return albedo * sum - 1;
  };
  return Float64Array.from(mu, (_, a) => {
    let [low, high] = [poles[a]!, poles[a + 1]!];
    for (let step = 0; step < 80; step++) {
      const middle = (low + high) / 2;
      if (middle <= low || middle >= high) break;
      // Rises from minus infinity (or w - 1) at the lower pole to plus infinity at the upper one.
      if (excess(middle) < 0) low = middle;
      else high = middle;
    }
    return Math.sqrt((low + high) / 2);
  });
}
