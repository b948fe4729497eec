import { describe, expect, it } from 'vitest';
import { fitPalette } from '../../src/fit/fit-palette.ts';
import { inventedSet } from './invented-set.ts';

describe('a rung weighed wrong', () => {
  it('is not seen where every rung is honest', () => {
    for (const seed of [31, 32, 33]) {
      expect(fitPalette(inventedSet(seed, { tubes: 3 }), { leaveOneOut: false }).warnings).toEqual([]);
    }
  });

  it('is named with the ratio it reads like, and left out', () => {
    const set = inventedSet(31, { tubes: 3, wrong: { 'paint-2-1:4': 1.5 } });
    const fit = fitPalette(set, { leaveOneOut: false });
    // 1.5 times the paint in four parts of white: 1:2.7.
    expect(fit.warnings).toHaveLength(1);
    expect(fit.warnings[0]).toMatch(/"paint-2-1:4" was weighed 1:4\.0 .* reads like 1:2\.[5-9]/);
    expect(fit.swatches.map((s) => s.id)).not.toContain('paint-2-1:4');
  });

  it('is recognised where the masses were noted the wrong way round', () => {
    const set = inventedSet(31, { tubes: 3, wrong: { 'paint-1-1:4': 16 } });
    const fit = fitPalette(set, { leaveOneOut: false });
    expect(fit.warnings[0]).toMatch(/"paint-1-1:4".*wrong way round/);
  });

  it('is told from two swatches that changed places, which it resembles', () => {
    for (const seed of [34, 41, 81]) {
      const set = inventedSet(seed, { tubes: 1, weighing: 0.004 });
      const noted = set.swatches.map((s) =>
        s.id === 'paint-1-1:4' ? { ...s, masses: { 'paint-1': 4, white: 1 } } : s,
      );
      const { leftOut } = fitPalette({ ...set, swatches: noted }, { leaveOneOut: false });
      expect(leftOut.map((l) => [l.swatches.join(), l.swapped])).toEqual([['paint-1-1:4', true]]);
    }
  });
});
