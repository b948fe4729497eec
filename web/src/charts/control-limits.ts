/**
 * Individuals chart with limits from the moving range of two: ISO 7870-2, "Control charts - Part 2: Shewhart control
 * charts" (constants d2 = 1.128 for a range of two, from memory), limits at mean +- 3 (mean moving range) / d2.
 */
export interface ControlLimits {
  readonly centre: number;
  readonly lower: number;
  readonly upper: number;
}

const D2 = 1.128;

/** Limits from at least two values; undefined with fewer, because one value says nothing of the scatter. */
export function controlLimits(values: readonly number[]): ControlLimits | undefined {
  if (values.length < 2) return undefined;
  const centre = values.reduce((a, b) => a + b, 0) / values.length;
  let moving = 0;
  for (let i = 1; i < values.length; i++) moving += Math.abs(values[i]! - values[i - 1]!);
  const half = (3 * moving) / (values.length - 1) / D2;
  return { centre, lower: centre - half, upper: centre + half };
}
