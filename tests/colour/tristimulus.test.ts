/**
 * Sources: CIE 15:2004 table T.3 white points (tests/fixtures/cie/white_points_computed.csv); ASTM E308-15 tables
 * carried to three decimals (e308_published_weights_3dp.csv); 14 spectra x 6 whites computed by a second
 * implementation (e308_reflectance_to_XYZ_cases.json).
 */
import { describe, expect, it } from 'vitest';
import { GRID_NM, flatSpectrum } from '../../src/colour/grid.ts';
import { ILLUMINANTS, OBSERVERS, type WhiteName, parseWhiteName } from '../../src/colour/illuminant.ts';
import { labOf } from '../../src/colour/lab.ts';
import { type LampWhite, lampWeights } from '../../src/colour/lamp-weights.ts';
import { LAMP_WEIGHTS } from '../../src/colour/tables/weights-lamps-10nm.ts';
import { tristimulusWeights } from '../../src/colour/tristimulus.ts';
import { xyzOf } from '../../src/colour/xyz.ts';
import { whitePoint } from '../../src/colour/white-point.ts';
import { readJson, readTable } from '../fixtures/read-table.ts';
import {
  LAB_SECOND_IMPLEMENTATION,
  WHITE_POINT_3_DECIMALS,
  XYZ_SECOND_IMPLEMENTATION,
} from '../tolerances.ts';

describe('tristimulus integration', () => {
  it('gives zero for black', () => {
    const xyz = xyzOf(flatSpectrum(0), tristimulusWeights('D65/10deg'));
    expect([xyz.X, xyz.Y, xyz.Z]).toEqual([0, 0, 0]);
  });

  it('gives Y = 100 for the perfect diffuser under every white, the ends folded in', () => {
    for (const i of ['A', 'C', 'D50', 'D55', 'D65', 'D75', 'FL2', 'FL7', 'FL11', 'LED-B3'] as const)
      for (const o of ['2deg', '10deg'] as const)
        expect(Math.abs(whitePoint(`${i}/${o}`).Y - 100)).toBeLessThan(WHITE_POINT_3_DECIMALS);
  });

  it('keeps each white as the sum of its weights, to the last bit', () => {
    for (const i of ILLUMINANTS)
      for (const o of OBSERVERS) {
        const white = `${i}/${o}` as const;
        expect(xyzOf(flatSpectrum(1), tristimulusWeights(white))).toEqual(whitePoint(white));
      }
  });

  it('gives a page the same weights for the whites it draws in', () => {
    for (const white of Object.keys(LAMP_WEIGHTS) as LampWhite[])
      for (const nm of [GRID_NM, [400, 450, 500, 550, 600, 650, 700]])
        expect(lampWeights(white, nm)).toEqual(tristimulusWeights(white, nm));
  });

  it('refuses a reading of another length', () => {
    expect(() => xyzOf([0.5, 0.5], tristimulusWeights('D65/10deg'))).toThrow(
      /36 wavelengths; 2 reflectances/,
    );
  });

  it('meets the white points of CIE 15:2004', () => {
    const printed: Record<string, [number, number]> = {
      // X, Z as printed to two or three decimals: optics of the standard's table T.3
      'D65/10deg': [94.811, 107.304],
      'A/10deg': [111.144, 35.2],
      'D65/2deg': [95.043, 108.88],
    };
    for (const [white, [X, Z]] of Object.entries(printed)) {
      const w = whitePoint(white as WhiteName);
      expect(Math.abs(w.X - X), white).toBeLessThan(WHITE_POINT_3_DECIMALS);
      expect(Math.abs(w.Z - Z), white).toBeLessThan(WHITE_POINT_3_DECIMALS);
    }
  });

  it('meets the sums of the published E308 tables', () => {
    const sums = new Map<string, number[]>();
    for (const r of readTable('cie/e308_published_weights_3dp.csv')) {
      const s = sums.get(r['table']!) ?? [0, 0, 0];
      ['Wx', 'Wy', 'Wz'].forEach((k, i) => (s[i]! += Number(r[k])));
      sums.set(r['table']!, s);
    }
    const a10 = sums.get('TWF_A_CIE_1964_10_10')!;
    const ours = whitePoint('A/10deg');
    expect(Math.abs(a10[0]! - ours.X)).toBeLessThan(WHITE_POINT_3_DECIMALS);
    expect(Math.abs(a10[2]! - ours.Z)).toBeLessThan(WHITE_POINT_3_DECIMALS);
  });

  interface Cases {
    wavelengths: number[];
    cases: {
      sample: string;
      R_400_700_10nm: number[];
      results: Record<string, { XYZ: number[]; Lab: number[] }>;
    }[];
  }
  const { wavelengths, cases } = readJson('cie/e308_reflectance_to_XYZ_cases.json') as Cases;

  it.each(cases)('reads the spectrum of sample $sample as the second implementation does', (c) => {
    const results = Object.entries(c.results);
    expect(results).toHaveLength(6);
    for (const [name, r] of results) {
      const white = parseWhiteName(...(name.split('/') as [string, string]));
      const xyz = xyzOf(c.R_400_700_10nm, tristimulusWeights(white, wavelengths));
      [xyz.X, xyz.Y, xyz.Z].forEach((v, i) =>
        expect(Math.abs(v - r.XYZ[i]!), `${white} ${i}`).toBeLessThan(XYZ_SECOND_IMPLEMENTATION),
      );
      const lab = labOf(xyz);
      [lab.L, lab.a, lab.b].forEach((v, i) =>
        expect(Math.abs(v - r.Lab[i]!), `${white} Lab ${i}`).toBeLessThan(LAB_SECOND_IMPLEMENTATION),
      );
    }
  });

  it('integrates a linear ramp from 0.1 at 400 nm to 0.8 at 700 nm as computed by hand for E308 with folded ends', () => {
    // Check value 45.6224, 45.2581, 23.8625 under D65/10deg; 61.0077, 49.5508, 8.2955 under A/10deg (calculated).
    const nm = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);
    const ramp = nm.map((l) => 0.1 + (0.7 * (l - 400)) / 300);
    const RAMP = 0.01;
    for (const [white, expected] of [
      ['D65/10deg', [45.6224, 45.2581, 23.8625]],
      ['A/10deg', [61.0077, 49.5508, 8.2955]],
      ['D65/2deg', [46.4849, 46.5807, 25.0151]],
    ] as [WhiteName, number[]][]) {
      const xyz = xyzOf(ramp, tristimulusWeights(white, nm));
      [xyz.X, xyz.Y, xyz.Z].forEach((v, i) => expect(Math.abs(v - expected[i]!)).toBeLessThan(RAMP));
    }
  });

  it('takes irregular wavelengths by interpolating the reading', () => {
    const flat = xyzOf([0.4, 0.4, 0.4], tristimulusWeights('D65/10deg', [400, 513, 690]));
    expect(flat.Y).toBeCloseTo(0.4 * whitePoint('D65/10deg').Y, 9);
    expect(() => tristimulusWeights('D65/10deg', [500, 500])).toThrow(/must ascend/);
    expect(GRID_NM).toHaveLength(36);
  });
});
