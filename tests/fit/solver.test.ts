import { describe, expect, it } from 'vitest';
import { backwardInPlace, choleskyInPlace, forwardInPlace } from '../../src/fit/linear/cholesky.ts';
import { levenbergMarquardt } from '../../src/fit/solve/levenberg-marquardt.ts';
import { CERTIFIED_DIGITS } from '../tolerances.ts';

/** A curve to fit: residuals by central differences of the model, normal equations by Cholesky. */
function curve(x: readonly number[], y: readonly number[], model: (x: number, b: Float64Array) => number) {
  const residual = (b: Float64Array): number[] => x.map((v, i) => y[i]! - model(v, b));
  const cost = (b: Float64Array): number => residual(b).reduce((sum, r) => sum + (r * r) / 2, 0);
  return {
    cost,
    linearise: (b: Float64Array) => {
      const n = b.length;
      const H = new Float64Array(n * n);
      const gradient = new Float64Array(n);
      const r = residual(b);
      x.forEach((v, i) => {
        const J = Array.from(b, (value, k) => {
          const h = 1e-6 * Math.max(Math.abs(value), 1e-8);
          const up = Float64Array.from(b, (w, j) => (j === k ? w + h : w));
          const down = Float64Array.from(b, (w, j) => (j === k ? w - h : w));
          return (model(v, up) - model(v, down)) / (2 * h);
        });
        J.forEach((a, k) => {
          gradient[k]! -= a * r[i]!;
          J.forEach((c, l) => (H[k * n + l]! += a * c));
        });
      });
      return {
        cost: cost(b),
        gradient,
        diagonal: Float64Array.from({ length: n }, (_, i) => H[i * n + i]!),
        solve: (right: Float64Array, extra: Float64Array) => {
          const L = Float64Array.from(H);
          for (let i = 0; i < n; i++) L[i * n + i]! += extra[i]!;
          if (!choleskyInPlace(L, n)) return null;
          const h = Float64Array.from(right);
          forwardInPlace(L, n, h, 1);
          backwardInPlace(L, n, h, 1);
          return h;
        },
      };
    },
  };
}

/**
 * Problems with certified values: Misra1a and Chwirut2-like exponentials of the NIST StRD collection for nonlinear
 * regression. Misra1a (lower difficulty): data and certified b1, b2 typed from memory of the published file; the
 * certified sum of squares, 0.12455138894, guards the data against a wrong digit.
 */
const MISRA1A = {
  x: [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760],
  y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
  certified: [238.94212918, 5.5015643181e-4],
  squares: 0.12455138894,
};

describe('Levenberg-Marquardt', () => {
  it('stops at once where it starts at the minimum, and says why', () => {
    const line = curve([0, 1, 2], [1, 3, 5], (v, b) => b[0]! + b[1]! * v);
    const report = levenbergMarquardt(line, Float64Array.of(1, 2));
    expect(report).toMatchObject({ status: 1, success: true, iterations: 0 });
    expect(report.message).toMatch(/gradient/);
  });

  it('reports that it ran out of iterations instead of claiming success', () => {
    const problem = curve(MISRA1A.x, MISRA1A.y, (v, b) => b[0]! * (1 - Math.exp(-b[1]! * v)));
    expect(levenbergMarquardt(problem, Float64Array.of(500, 1e-4), { maxIterations: 1 })).toMatchObject({
      status: 0,
      success: false,
    });
  });

  it.each([
    [500, 0.0001],
    [250, 0.0005],
  ])('reaches the certified values of Misra1a from (%f, %f)', (b1, b2) => {
    const problem = curve(MISRA1A.x, MISRA1A.y, (v, b) => b[0]! * (1 - Math.exp(-b[1]! * v)));
    const report = levenbergMarquardt(problem, Float64Array.of(b1, b2), {
      ftol: 1e-14,
      gtol: 0,
      xtol: 1e-12,
    });
    MISRA1A.certified.forEach((value, k) =>
      expect(Math.abs(report.x[k]! / value - 1)).toBeLessThan(CERTIFIED_DIGITS),
    );
    expect(Math.abs((2 * report.cost) / MISRA1A.squares - 1)).toBeLessThan(CERTIFIED_DIGITS);
  });
});
