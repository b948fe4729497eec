import { describe, expect, it } from 'vitest';
import { GRID_SIZE } from '../../src/colour/grid.ts';
import type { ProfileTube } from '../../src/profile/schema.ts';
import { constantCurve } from '../../web/src/charts/constants-band.ts';

const flat = (v: number): number[] => Array.from({ length: GRID_SIZE }, () => v);

function tube(own: number[][], shared: number[][]): ProfileTube {
  return { id: 'x', label: 'x', pigments: [], K: flat(0.4), S: flat(2), covariance: { own, shared } };
}

describe('constantCurve', () => {
  it('has no width without a covariance', () => {
    const curve = constantCurve(tube([], []), 'K');
    expect(curve.low).toEqual(flat(0.4));
    expect(curve.high).toEqual(flat(0.4));
  });

  it('adds own and shared columns in quadrature, K from the first half and S from the second', () => {
    const own = [[...flat(0.03), ...flat(0)]];
    const shared = [[...flat(0.04), ...flat(0.1)]];
    // 0.03 and 0.04 make 0.05; 1.959964 is the normal's 0.975 quantile (any table of the standard normal distribution).
    const k = constantCurve(tube(own, shared), 'K');
    expect(Math.log(k.high[7]! / 0.4)).toBeCloseTo(1.959964 * 0.05, 6);
    expect(Math.log(k.low[7]! / 0.4)).toBeCloseTo(-1.959964 * 0.05, 6);
    const s = constantCurve(tube(own, shared), 'S');
    expect(Math.log(s.high[35]! / 2)).toBeCloseTo(1.959964 * 0.1, 6);
  });
});
