/**
 * Levenberg-Marquardt: K. Levenberg, Quart. Appl. Math. 2 (1944) 164-168; D. W. Marquardt, SIAM J. Appl. Math. 11
 * (1963) 431-441; the damping follows the gain ratio as in H. B. Nielsen, "Damping Parameter in Marquardt's Method",
 * IMM-REP-1999-05, Technical University of Denmark. The report has the members of scipy's least_squares.
 */
import { say } from '../sentences.ts';

/** A cost half the sum of squares at a point, its gradient, and the curvature's diagonal and damped solution. */
export interface Linearisation {
  readonly cost: number;
  readonly gradient: Float64Array;
  readonly diagonal: Float64Array;
  /** Solves (H + diag(extra)) h = right; null where that is not positive definite. */
  solve(right: Float64Array, extra: Float64Array): Float64Array | null;
}

export interface LeastSquaresProblem {
  linearise(x: Float64Array): Linearisation;
  cost(x: Float64Array): number;
}

export interface SolverOptions {
  /** Relative fall of the cost. @default 1e-9 */
  readonly ftol?: number;
  /** Relative length of a step. @default 1e-9 */
  readonly xtol?: number;
  /** Largest component of the gradient. @default 1e-8 */
  readonly gtol?: number;
  /** @default 200 */
  readonly maxIterations?: number;
  /** Damping to start with, relative to the curvature. @default 1e-3 */
  readonly damping?: number;
  /** Longest component of a step. @default Infinity */
  readonly maxStep?: number;
  /** Leave the gradient at the end point unasked, so that `optimality` is that of the point before. @default false */
  readonly hasty?: boolean;
}

/** 0 out of iterations, 1 gradient, 2 cost, 3 step, -1 no step could be found. */
export type SolverStatus = -1 | 0 | 1 | 2 | 3;

export const SOLVER_MESSAGES: Record<SolverStatus, string> = {
  [-1]: say('not-inverted'),
  0: say('most-iterations'),
  1: say('gradient'),
  2: say('cost'),
  3: say('step'),
};

export interface SolverReport {
  readonly x: Float64Array;
  readonly cost: number;
  /** Largest component of the gradient. */
  readonly optimality: number;
  readonly status: SolverStatus;
  readonly success: boolean;
  readonly message: string;
  readonly iterations: number;
  readonly evaluations: number;
  /** Damping at the end, to go on with. */
  readonly damping: number;
}

const MAX_DAMPING = 1e16;

/** Minimises from `start`. */
export function levenbergMarquardt(
  problem: LeastSquaresProblem,
  start: Float64Array,
  options: SolverOptions = {},
): SolverReport {
  const { ftol = 1e-9, xtol = 1e-9, gtol = 1e-8, maxIterations = 200, damping = 1e-3 } = options;
  const maxStep = options.maxStep ?? Infinity;
  let x = Float64Array.from(start);
  let at = problem.linearise(x);
  let reached = at.cost;
  const scale = at.diagonal.map((d) => d);
  let lambda = damping;
  let grow = 2;
  let evaluations = 1;
  let iterations = 0;
  let status: SolverStatus = 0;
  let behind = false;
  while (iterations < maxIterations) {
    if (behind) {
      at = problem.linearise(x);
      behind = false;
    }
    const optimality = largest(at.gradient);
    if (optimality <= gtol) {
      status = 1;
      break;
    }
    for (let i = 0; i < scale.length; i++) scale[i] = Math.max(scale[i]!, at.diagonal[i]!, 1e-30);
    const extra = scale.map((d) => d * lambda);
    const h = at.solve(
      at.gradient.map((g) => -g),
      extra,
    );
    if (!h) {
      lambda = Math.max(lambda, 1e-12) * grow;
      grow *= 2;
      if (lambda > MAX_DAMPING) {
        status = -1;
        break;
      }
      continue;
    }
    const longest = largest(h);
    if (longest > maxStep) for (let i = 0; i < h.length; i++) h[i]! *= maxStep / longest;
    let xNorm = 0;
    let hNorm = 0;
    let promised = 0;
    for (let i = 0; i < h.length; i++) {
      xNorm += x[i]! ** 2;
      hNorm += h[i]! ** 2;
      promised += 0.5 * h[i]! * (extra[i]! * h[i]! - at.gradient[i]!);
    }
    const next = x.map((v, i) => v + h[i]!);
    const cost = problem.cost(next);
    evaluations++;
    const gain = (reached - cost) / promised;
    iterations++;
    if (gain > 0 && Number.isFinite(cost)) {
      const fall = reached - cost;
      x = next;
      reached = cost;
      behind = true;
      lambda = Math.max(1e-15, lambda * Math.max(1 / 10, 1 - (2 * gain - 1) ** 3));
      grow = 2;
      if (fall <= ftol * cost && longest <= maxStep) {
        status = 2;
        break;
      }
    } else {
      lambda *= grow;
      grow *= 2;
    }
    if (Math.sqrt(hNorm) <= xtol * (xtol + Math.sqrt(xNorm))) {
      status = 3;
      break;
    }
    if (lambda > MAX_DAMPING) {
      status = -1;
      break;
    }
  }
  if (behind && !options.hasty) at = problem.linearise(x);
  return {
    x,
    cost: reached,
    optimality: largest(at.gradient),
    status,
    success: status > 0,
    message: SOLVER_MESSAGES[status],
    iterations,
    evaluations,
    damping: lambda,
  };
}

function largest(v: Float64Array): number {
  let most = 0;
  for (const value of v) most = Math.max(most, Math.abs(value));
  return most;
}
