import type { ScaleLinear, ScaleLogarithmic } from 'd3-scale';
import type { Tick } from './axes.ts';
import { tickCount } from './frame.ts';
import { num } from '../text/numbers.ts';

const span = (range: number[]): number => Math.abs(range[1]! - range[0]!);

/** Even ticks of a linear axis, numbers written with the decimals the step needs. */
export function linearTicks(
  scale: ScaleLinear<number, number>,
  count = tickCount(span(scale.range())),
): Tick[] {
  const values = scale.ticks(count);
  const step = values.length > 1 ? Math.abs(values[1]! - values[0]!) : 1;
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return values.map((v) => ({ at: scale(v), text: num(v, decimals) }));
}

/** Decades of a log axis with their 2s and 5s where there is room; the other steps are hairs. */
export function logTicks(scale: ScaleLogarithmic<number, number>): Tick[] {
  const [low, high] = scale.domain() as [number, number];
  const perDecade = span(scale.range()) / Math.max(0.3, Math.log10(high / low));
  const named = perDecade > 110 ? [1, 2, 5] : perDecade > 70 ? [1, 3] : [1];
  const ticks: Tick[] = [];
  for (let d = Math.floor(Math.log10(low)); d <= Math.ceil(Math.log10(high)); d++) {
    for (let m = 1; m < 10; m++) {
      const v = m * 10 ** d;
      if (v < low * 0.999 || v > high * 1.001) continue;
      const minor = !named.includes(m);
      ticks.push({ at: scale(v), text: minor ? '' : num(v, Math.max(0, -d)), minor });
    }
  }
  return ticks;
}

/** A log domain around positive numbers, opened to a tidy 1, 2 or 5. */
export function logDomain(values: readonly number[]): [number, number] {
  const positive = values.filter((v) => v > 0 && Number.isFinite(v));
  if (positive.length === 0) return [0.01, 1];
  const tidy = (v: number, down: boolean): number => {
    const d = 10 ** Math.floor(Math.log10(v));
    const steps = down ? [5, 2, 1] : [1, 2, 5, 10];
    return d * steps.find((s) => (down ? s * d <= v * 1.0001 : s * d >= v * 0.9999))!;
  };
  const low = tidy(Math.min(...positive), true);
  const high = tidy(Math.max(...positive), false);
  return high / low < 4 ? [low / 2, high * 2] : [low, high];
}
