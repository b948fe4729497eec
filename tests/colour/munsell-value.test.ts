/** Source: the polynomial of ASTM D1535; tables tests/fixtures/colour/d1535_*.csv. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flatSpectrum } from '../../src/colour/grid.ts';
import { luminanceOfValue, valueOfLuminance } from '../../src/colour/munsell-value.ts';
import { valueOfReflectance } from '../../src/colour/value-of-reflectance.ts';
import { readTable } from '../fixtures/read-table.ts';
import { PRINTED_6_DECIMALS, SAME_ARITHMETIC } from '../tolerances.ts';

describe('Munsell value', () => {
  it('is 0 for black and for anything darker, 10 for the perfect diffuser', () => {
    expect(valueOfLuminance(0)).toBe(0);
    expect(valueOfLuminance(-3)).toBe(0);
    expect(valueOfLuminance(Number.NaN)).toBe(0);
    expect(valueOfLuminance(luminanceOfValue(10))).toBeCloseTo(10, 10);
  });

  it('runs a little past 10 for a reflectance factor over 1, and does not clip', () => {
    expect(valueOfLuminance(101)).toBeGreaterThan(10);
  });

  it('meets the standard, V to Y', () => {
    for (const r of readTable('colour/d1535_value_Y_table.csv'))
      expect(Math.abs(luminanceOfValue(Number(r['V'])) - Number(r['Y_D1535']))).toBeLessThanOrEqual(
        PRINTED_6_DECIMALS,
      );
  });

  it('meets the standard, Y to V', () => {
    for (const r of readTable('colour/d1535_Y_to_V.csv'))
      expect(Math.abs(valueOfLuminance(Number(r['Y'])) - Number(r['V_D1535'])), r['Y']).toBeLessThanOrEqual(
        PRINTED_6_DECIMALS,
      );
  });

  it('returns from a round trip anywhere on the scale', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 10, noNaN: true }),
        (V) => Math.abs(valueOfLuminance(luminanceOfValue(V)) - V) < SAME_ARITHMETIC,
      ),
      { seed: 1535 },
    );
  });

  it('rises with reflectance', () => {
    const v = [0.01, 0.05, 0.2, 0.5, 0.9].map((r) => valueOfReflectance(flatSpectrum(r)));
    expect([...v].sort((a, b) => a - b)).toEqual(v);
    expect(v[2]).toBeCloseTo(5.082076, 3); // Y = 20
  });
});
