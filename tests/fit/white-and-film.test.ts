import { describe, expect, it } from 'vitest';
import { flatSpectrum } from '../../src/colour/grid.ts';
import { moveToWhite } from '../../src/fit/bridge.ts';
import type { TubeConstants } from '../../src/fit/constants.ts';
import { hidingThickness } from '../../src/fit/hiding-thickness.ts';
import { kOverS } from '../../src/fit/optics/kubelka-munk.ts';
import { PRINTED_6_DECIMALS, SAME_ARITHMETIC } from '../tolerances.ts';

describe('the thickness that hides', () => {
  it('refuses a ratio of 1, which no film reaches', () => {
    expect(() => hidingThickness(0.1, 1, { ratio: 1 })).toThrow(/between 0 and 1/);
  });

  // Kubelka 1948 solved for a contrast ratio of 0.98 over 0.8, S = 1, by the reflectance of the opaque film.
  it.each([
    [0.5, 2.871655],
    [0.7, 4.838052],
    [0.8, 6.500688],
    [0.85, 7.667049],
    [0.9, 9.142672],
    [0.95, 10.808942],
  ])('is, for an opaque film of R %f, SX %f', (R, SX) => {
    expect(Math.abs(hidingThickness(kOverS(R), 1) - SX)).toBeLessThan(PRINTED_6_DECIMALS);
  });
});

describe('a tube moved to another white', () => {
  const tube = (id: string, lnK: number, lnS: number): TubeConstants => ({
    id,
    lnK: flatSpectrum(lnK),
    lnS: flatSpectrum(lnS),
    own: [new Float64Array(72).fill(0.01)],
    shared: [],
  });

  it('keeps its mixtures with that other white: q does not know the unit', () => {
    const bridge = tube('white-b', Math.log(0.004), Math.log(0.6));
    const blue = tube('blue', Math.log(2), Math.log(0.1));
    const [moved] = moveToWhite([blue], bridge);
    // In B's units white B is K_B/S_B over 1; in A's it is the bridge.
    const q = (K: number, S: number, Kw: number, Sw: number): number =>
      (0.2 * K + 0.8 * Kw) / (0.2 * S + 0.8 * Sw);
    const inB = q(2, 0.1, 0.004 / 0.6, 1);
    const inA = q(Math.exp(moved!.lnK[5]!), Math.exp(moved!.lnS[5]!), 0.004, 0.6);
    expect(Math.abs(inA / inB - 1)).toBeLessThan(SAME_ARITHMETIC);
  });

  it('carries the bridge’s doubt as shared: all moved tubes stand on it', () => {
    const [moved] = moveToWhite([tube('blue', 0, 0)], tube('white-b', 0, 0));
    expect(moved!.shared).toHaveLength(1);
    expect([...moved!.shared[0]!]).toEqual([...new Float64Array(72).fill(0.01)]);
  });
});
