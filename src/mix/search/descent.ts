/**
 * Damped Gauss-Newton on amounts that may not go below a floor (K. Levenberg, Quart. Appl. Math. 2 (1944) 164-168;
 * the floor by projection with an active set, D. P. Bertsekas, SIAM J. Control Optim. 20 (1982) 221-246).
 * With no floor given it is zero everywhere, only ratios count, and amounts are kept summing to 1.
 */

/** What is made small, over amounts x[0..m). */
export interface DescentProblem {
  /** Cost at x. */
  cost(x: Float64Array): number;
  /** Cost at x; its gradient into `slope` (m); a positive semidefinite curvature into `A` (m times m, row by row). */
  model(x: Float64Array, slope: Float64Array, A: Float64Array): number;
  /** What `model` gives at the x that `cost` was last asked for, where that comes cheaper. */
  again?(slope: Float64Array, A: Float64Array): number;
}

export interface DescentOptions {
  /** Least amount of each tube; without it amounts are shares. */
  readonly floor?: Float64Array;
  /** Give up, with cost Infinity, once a tube rests on its floor and wants to go lower. @default false */
  readonly interior?: boolean;
  /** Cost that counts as reached. @default 1e-8 */
  readonly reached?: number;
  /** @default 40 */
  readonly maxIterations?: number;
}

export interface Descent {
  /** Improves x[0..m) in place and returns the cost reached. */
  solve(problem: DescentProblem, x: Float64Array, m: number, options?: DescentOptions): number;
}

const REACHED = 1e-8;
/** A step that wins less than this share of the cost is the last; one that promises less is not tried. */
const FLAT = 1e-9;
const MOST_TRIES = 14;

/** A descent with scratch arrays for up to `most` amounts. */
export function descent(most: number): Descent {
  const A = new Float64Array(most * most);
  const L = new Float64Array(most * most);
  const slope = new Float64Array(most);
  const step = new Float64Array(most);
  const right = new Float64Array(most);
  const solved = new Float64Array(most);
  const trial = new Float64Array(most);
  const free = new Int32Array(most);
  const open = new Int32Array(most);

  /** Solves (A + damping diag A) step = right over the first `f` of `open` by Cholesky. */
  const solveOpen = (m: number, f: number, damping: number): void => {
    for (let r = 0; r < f; r++) {
      const jr = open[r]!;
      for (let c = 0; c <= r; c++) {
        const jc = open[c]!;
        let v = A[jr * m + jc]!;
        if (r === c) v = v * (1 + damping) + 1e-12;
        for (let k = 0; k < c; k++) v -= L[r * m + k]! * L[c * m + k]!;
        L[r * m + c] = r === c ? Math.sqrt(Math.max(v, 1e-14)) : v / L[c * m + c]!;
      }
    }
    for (let r = 0; r < f; r++) {
      let v = right[open[r]!]!;
      for (let k = 0; k < r; k++) v -= L[r * m + k]! * solved[k]!;
      solved[r] = v / L[r * m + r]!;
    }
    for (let r = f - 1; r >= 0; r--) {
      let v = solved[r]!;
      for (let k = r + 1; k < f; k++) v -= L[k * m + r]! * solved[k]!;
      solved[r] = v / L[r * m + r]!;
    }
  };

  /**
   * The damped step from x, over the free amounts: those it would take below the floor stop there, and the others take
   * their step knowing it (unless it is to be clipped: a search that ends at its edge need not follow it). Returns what
   * the step wins by the slopes and the curvature; what stopped may make that less than nothing.
   */
  const boundedStep = (
    x: Float64Array,
    m: number,
    f: number,
    damping: number,
    floor: Float64Array | undefined,
    clip: boolean,
  ): number => {
    let left = f;
    for (let r = 0; r < f; r++) open[r] = free[r]!;
    for (let j = 0; j < m; j++) {
      step[j] = 0;
      right[j] = -slope[j]!;
    }
    while (left > 0) {
      solveOpen(m, left, damping);
      // Who stops first; those that stand on the floor already stop together.
      let soonest = 1;
      for (let r = 0; r < left && !clip; r++) {
        const down = (floor ? floor[open[r]!]! : 0) - x[open[r]!]!;
        if (solved[r]! < down) soonest = Math.min(soonest, down / solved[r]!);
      }
      let still = 0;
      for (let r = 0; r < left; r++) {
        const j = open[r]!;
        const down = (floor ? floor[j]! : 0) - x[j]!;
        if (clip || solved[r]! >= down || down / solved[r]! > soonest) {
          step[j] = solved[r]!;
          open[still++] = j;
        } else {
          step[j] = down;
          for (let k = 0; k < m; k++) right[k]! -= A[k * m + j]! * down;
        }
      }
      if (still === left) break;
      left = still;
    }
    let win = 0;
    for (let j = 0; j < m; j++) {
      let half = 0;
      for (let k = 0; k < m; k++) half += A[j * m + k]! * step[k]!;
      win -= step[j]! * (slope[j]! + half / 2);
    }
    return win;
  };

  const normalise = (x: Float64Array, m: number): void => {
    let sum = 0;
    for (let j = 0; j < m; j++) sum += x[j]!;
    for (let j = 0; j < m; j++) x[j]! /= sum;
  };

  /** The free amounts: off the floor, or wanting to leave it. -1 when an interior search has met its edge. */
  const chooseFree = (
    x: Float64Array,
    m: number,
    floor: Float64Array | undefined,
    leave: boolean,
  ): number => {
    let f = 0;
    for (let j = 0; j < m; j++) {
      if (x[j]! > (floor ? floor[j]! : 0) || slope[j]! < 0) free[f++] = j;
      else if (leave) return -1;
    }
    return f;
  };

  /** Moves `trial` from x by the step, not below the floor. False when nothing is left of it. */
  const place = (x: Float64Array, m: number, floor: Float64Array | undefined): boolean => {
    for (let j = 0; j < m; j++) trial[j] = Math.max(floor ? floor[j]! : 0, x[j]! + step[j]!);
    let sum = 0;
    for (let j = 0; j < m; j++) sum += trial[j]!;
    if (!(sum > 0)) return false;
    if (!floor) for (let j = 0; j < m; j++) trial[j]! /= sum;
    return true;
  };

  return {
    solve(problem, x, m, options = {}) {
      const { floor, interior = false, reached = REACHED, maxIterations = 40 } = options;
      let damping = 1e-3;
      let cost = Infinity;
      if (!floor) normalise(x, m);
      for (let iteration = 0; iteration < maxIterations; iteration++) {
        cost = iteration > 0 && problem.again ? problem.again(slope, A) : problem.model(x, slope, A);
        if (cost < reached) return cost;
        const f = chooseFree(x, m, floor, interior && iteration > 1);
        if (f < 0) return Infinity;
        if (f === 0) return cost;
        let better = cost;
        for (let tries = 0; tries < MOST_TRIES; tries++) {
          const win = boundedStep(x, m, f, damping, floor, interior);
          if (win >= 0 && win < FLAT * cost) return cost;
          better = win > 0 && place(x, m, floor) ? problem.cost(trial) : Infinity;
          if (better < cost) break;
          damping = damping === 0 ? 1e-3 : damping * 6;
        }
        if (!(better < cost)) return cost;
        for (let j = 0; j < m; j++) x[j] = trial[j]!;
        damping = damping < 1e-9 ? 0 : damping / 8;
        if (better < reached || cost - better < FLAT * cost) return better;
      }
      return cost;
    },
  };
}
