import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stepEdges } from '../../src/study/value-steps.ts';

/** Sum of squares about the mean inside the steps, the quantity that Fisher's grouping makes least. */
function within(values: readonly number[], edges: readonly number[]): number {
  const groups = new Map<number, number[]>();
  for (const v of values) {
    const step = edges.filter((e) => v >= e).length;
    groups.set(step, [...(groups.get(step) ?? []), v]);
  }
  let sum = 0;
  for (const group of groups.values()) {
    const mean = group.reduce((p, q) => p + q, 0) / group.length;
    sum += group.reduce((p, q) => p + (q - mean) ** 2, 0);
  }
  return sum;
}

/** Every way to cut sorted distinct values into `count` runs. */
function leastByTrying(values: readonly number[], count: number): number {
  const distinct = [...new Set(values)].sort((p, q) => p - q);
  const cuts = distinct.slice(1).map((v, i) => (v + distinct[i]!) / 2);
  const choose = (from: number, left: number): number[][] =>
    left === 0
      ? [[]]
      : cuts.slice(from).flatMap((c, i) => choose(from + i + 1, left - 1).map((rest) => [c, ...rest]));
  return Math.min(...choose(0, Math.min(count, distinct.length) - 1).map((edges) => within(values, edges)));
}

describe('value steps', () => {
  it('need no edge for no value, one value or one step', () => {
    expect(stepEdges([], 4, 'natural')).toEqual([]);
    expect(stepEdges([5, 5, 5], 4, 'natural')).toEqual([]);
    expect(stepEdges([5, 5, 5], 4, 'even')).toEqual([]);
    expect(stepEdges([1, 9], 1, 'natural')).toEqual([]);
  });

  it('are no more than there are values', () => {
    expect(stepEdges([2, 8, 2, 8], 5, 'natural')).toEqual([5]);
  });

  it('fall into the gaps of a picture with plain lights and darks', () => {
    const edges = stepEdges([1, 1.2, 1.1, 5, 5.1, 8.8, 9], 3, 'natural');
    expect(edges[0]).toBeGreaterThan(1.2);
    expect(edges[0]).toBeLessThan(5);
    expect(edges[1]).toBeGreaterThan(5.1);
    expect(edges[1]).toBeLessThan(8.8);
  });

  it('are as good as the best of all divisions tried one by one', () => {
    const value = fc.integer({ min: 0, max: 40 }).map((n) => n / 4);
    fc.assert(
      fc.property(
        fc.array(value, { minLength: 2, maxLength: 10 }),
        fc.integer({ min: 2, max: 4 }),
        (values, count) => {
          const edges = stepEdges(values, count, 'natural');
          expect(within(values, edges)).toBeLessThanOrEqual(leastByTrying(values, count) + 1e-9);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('are of equal width when asked for', () => {
    expect(stepEdges([2, 8, 3, 3], 3, 'even')).toEqual([4, 6]);
  });

  it.each([0, 2.5, Number.NaN])('refuses %s steps', (count) => {
    expect(() => stepEdges([1, 2], count, 'natural')).toThrow(/ask for a whole number from 1 up/);
  });
});
