/**
 * Goals that look for an edge rather than a colour, in the kernel's channels (L, a, b, L* under C/2deg).
 * What is held counts as a square this heavy, which keeps it to a few hundredths of a unit.
 */
import { WARM_HUE_DEGREES } from '../../colour/lean.ts';
import type { Goal } from '../search/goal.ts';

const HELD = 3000;

interface Square {
  /** Weights of the four channels in this residual. */
  readonly of: readonly [number, number, number, number];
  readonly to: number;
  readonly weight: number;
}

/**
 * The sum of squares of linear residuals in the channels, written out as u^T Q u - 2 p^T u + r, whose curvature 2 Q is
 * the same everywhere.
 */
export function squaresGoal(squares: readonly Square[]): Goal {
  const Q = new Float64Array(16);
  const p = new Float64Array(4);
  let r = 0;
  for (const { of, to, weight } of squares) {
    r += weight * to * to;
    for (let c = 0; c < 4; c++) {
      p[c]! += weight * to * of[c]!;
      for (let d = 0; d < 4; d++) Q[c * 4 + d]! += weight * of[c]! * of[d]!;
    }
  }
  const half = new Float64Array(4);
  const costAndHalf = (u: Float64Array): number => {
    let cost = r;
    for (let c = 0; c < 4; c++) {
      const q = Q[4 * c]! * u[0]! + Q[4 * c + 1]! * u[1]! + Q[4 * c + 2]! * u[2]! + Q[4 * c + 3]! * u[3]!;
      cost += u[c]! * (q - 2 * p[c]!);
      half[c] = q - p[c]!;
    }
    return cost;
  };
  return {
    cost: costAndHalf,
    model(u, g, H) {
      const cost = costAndHalf(u);
      for (let c = 0; c < 4; c++) g[c] = 2 * half[c]!;
      for (let i = 0; i < 16; i++) H[i] = 2 * Q[i]!;
      return cost;
    },
  };
}

/** As dark (to = 0) or as light (to = 110) as can be, by L* under C/2deg. */
export const towardValue = (to: number): Goal => squaresGoal([{ of: [0, 0, 0, 1], to, weight: 1 }]);

/** The least chroma at a value held. */
export const neutralAtValue = (valueL: number): Goal =>
  squaresGoal([
    { of: [0, 0, 0, 1], to: valueL, weight: HELD },
    { of: [0, 1, 0, 0], to: 0, weight: 1 },
    { of: [0, 0, 1, 0], to: 0, weight: 1 },
  ]);

/** As warm (or, below zero, as cool) as can be at a value held (L* under C/2deg). */
export const leanAtValue = (lean: number, valueL: number): Goal => {
  const h = (WARM_HUE_DEGREES * Math.PI) / 180;
  return squaresGoal([
    { of: [0, 0, 0, 1], to: valueL, weight: HELD },
    { of: [0, Math.cos(h), Math.sin(h), 0], to: lean, weight: 1 },
  ]);
};

/** Chroma `far` out along a hue (radians), the hue held; the value held too where one is given. */
export const alongHue = (hue: number, far: number, valueL?: number): Goal =>
  squaresGoal([
    { of: [0, -Math.sin(hue), Math.cos(hue), 0], to: 0, weight: HELD },
    { of: [0, Math.cos(hue), Math.sin(hue), 0], to: far, weight: 1 },
    ...(valueL === undefined ? [] : [{ of: [0, 0, 0, 1] as const, to: valueL, weight: HELD }]),
  ]);
