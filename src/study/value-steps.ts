import { say } from './sentences.ts';

/**
 * Where a picture's values divide into steps. Two ways:
 * - natural: the division of the histogram with the least sum of squares inside the steps. W. D. Fisher, "On Grouping
 *   for Maximum Homogeneity", Journal of the American Statistical Association 53 (1958) 789-798; found exactly by
 *   dynamic programming.
 * - even: steps of equal width between the darkest and the lightest.
 */
export type Stepping = 'natural' | 'even';

const BINS = 200;
const TOP = 10;

/**
 * Upper edges of all steps but the last, ascending, Munsell value. Fewer than `count - 1` edges come back where the
 * picture has fewer distinct values than steps.
 * @param values Munsell values, 0..10 (a glossy white may run a little past).
 * @param count wanted number of steps, 1 or more.
 */
export function stepEdges(values: ArrayLike<number>, count: number, stepping: Stepping): number[] {
  if (!Number.isInteger(count) || count < 1) {
    throw new RangeError(say('value-steps', { count }));
  }
  if (count === 1 || values.length === 0) return [];
  return stepping === 'even' ? evenEdges(values, count) : naturalEdges(values, count);
}

function evenEdges(values: ArrayLike<number>, count: number): number[] {
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < values.length; i++) {
    low = Math.min(low, values[i]!);
    high = Math.max(high, values[i]!);
  }
  if (!(high > low)) return [];
  return Array.from({ length: count - 1 }, (_, i) => low + ((i + 1) / count) * (high - low));
}

function naturalEdges(values: ArrayLike<number>, count: number): number[] {
  const bins = histogram(values);
  const n = bins.length;
  const steps = Math.min(count, n);
  // Prefix sums give the sum of squares about the mean of any run of bins at once.
  const w = prefix(bins.map((bin) => bin.weight));
  const wx = prefix(bins.map((bin) => bin.weight * bin.value));
  const wxx = prefix(bins.map((bin) => bin.weight * bin.value ** 2));
  const within = (from: number, to: number): number => {
    const weight = w[to]! - w[from]!;
    const sum = wx[to]! - wx[from]!;
    return Math.max(0, wxx[to]! - wxx[from]! - (sum * sum) / weight);
  };
  let best = Array.from({ length: n + 1 }, (_, to) => (to === 0 ? 0 : within(0, to)));
  const cuts: number[][] = [];
  for (let k = 2; k <= steps; k++) {
    const cut = Array.from({ length: n + 1 }, () => 0);
    const next = Array.from({ length: n + 1 }, () => Infinity);
    for (let to = k; to <= n; to++) {
      for (let from = k - 1; from < to; from++) {
        const cost = best[from]! + within(from, to);
        if (cost < next[to]!) [next[to], cut[to]] = [cost, from];
      }
    }
    cuts.push(cut);
    best = next;
  }
  const edges: number[] = [];
  for (let to = n, k = cuts.length - 1; k >= 0; k--) {
    to = cuts[k]![to]!;
    edges.unshift((bins[to - 1]!.value + bins[to]!.value) / 2);
  }
  return edges;
}

function histogram(values: ArrayLike<number>): { value: number; weight: number }[] {
  const weight = new Float64Array(BINS);
  const sum = new Float64Array(BINS);
  for (let i = 0; i < values.length; i++) {
    const bin = Math.min(BINS - 1, Math.max(0, Math.floor((values[i]! / TOP) * BINS)));
    weight[bin]! += 1;
    sum[bin]! += values[i]!;
  }
  return Array.from(weight, (n, i) => ({ weight: n, value: sum[i]! / n })).filter((bin) => bin.weight > 0);
}

function prefix(numbers: readonly number[]): Float64Array {
  const sums = new Float64Array(numbers.length + 1);
  numbers.forEach((v, i) => (sums[i + 1] = sums[i]! + v));
  return sums;
}
