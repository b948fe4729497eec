/**
 * Control chart of individuals and moving ranges for a check tile read once a session: NIST/SEMATECH "e-Handbook of
 * Statistical Methods", 6.3.2.2: limits mean +- 3 MRbar / d2 with d2 = 1.128, so 2.66 MRbar; moving ranges up to
 * D4 MRbar with D4 = 3.267 (both for ranges of two).
 */
import { ReadingRefused } from '../refusal.ts';
import { say } from './sentences.ts';

/** 3 / d2 for moving ranges of two. */
export const INDIVIDUALS_FACTOR = 2.66;
/** D4 for moving ranges of two. */
export const MOVING_RANGE_FACTOR = 3.267;
/** Fewer points than this draw limits that may still move a good deal. Common practice, no source. */
export const FIRM_POINTS = 20;
/** Fewer than this draw no limits at all. Common practice, no source. */
export const LEAST_POINTS = 5;

export interface ControlLimits {
  readonly mean: number;
  readonly lower: number;
  readonly upper: number;
  readonly meanRange: number;
  readonly upperRange: number;
  readonly points: number;
  /** At least 20 points stand behind them. */
  readonly firm: boolean;
}

/**
 * Limits from a base of past values, oldest first. `factor` widens them where many charts are watched at once.
 * @throws ReadingRefused `too-few` below five points
 */
export function controlLimits(base: readonly number[], factor = INDIVIDUALS_FACTOR): ControlLimits {
  if (base.length < LEAST_POINTS) {
    throw new ReadingRefused('too-few', say('too-few', { wanted: LEAST_POINTS, count: base.length }));
  }
  const mean = base.reduce((sum, v) => sum + v, 0) / base.length;
  const ranges = movingRanges(base);
  const meanRange = ranges.reduce((sum, v) => sum + v, 0) / ranges.length;
  return {
    mean,
    lower: mean - factor * meanRange,
    upper: mean + factor * meanRange,
    meanRange,
    upperRange: MOVING_RANGE_FACTOR * meanRange * (factor / INDIVIDUALS_FACTOR),
    points: base.length,
    firm: base.length >= FIRM_POINTS,
  };
}

/** Distances between neighbours: one fewer than the values. */
export function movingRanges(values: readonly number[]): number[] {
  return values.slice(1).map((v, i) => Math.abs(v - values[i]!));
}

export type ChartSignal = 'inside' | 'above' | 'below' | 'jump';

/** Judges the next value, coming after `previous`, against limits drawn from values before it. */
export function judgeValue(value: number, previous: number, limits: ControlLimits): ChartSignal {
  // Values that are all the same differ from their own mean by a rounding of the arithmetic.
  const rounding = 1e-12 * Math.max(1, Math.abs(limits.mean));
  if (value > limits.upper + rounding) return 'above';
  if (value < limits.lower - rounding) return 'below';
  return Math.abs(value - previous) > limits.upperRange + rounding ? 'jump' : 'inside';
}
