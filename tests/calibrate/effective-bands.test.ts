import { describe, expect, it } from 'vitest';
import { GRID_NM } from '../../src/colour/grid.ts';
import { curveOfSteps, effectiveBands, responseOf } from '../../src/calibrate/bands/effective-bands.ts';
import { readTable } from '../fixtures/read-table.ts';
import { BAND_CENTRE_NM, SAME_ARITHMETIC } from '../tolerances.ts';

/** Nominal bands of an 8-band sensor (datasheet nominals). */
const EIGHT = [
  ['F1', 415, 26],
  ['F2', 445, 30],
  ['F3', 480, 36],
  ['F4', 515, 39],
  ['F5', 555, 39],
  ['F6', 590, 40],
  ['F7', 630, 50],
  ['F8', 680, 52],
].map(
  ([name, centreNm, fwhmNm]) =>
    ({ name, centreNm, fwhmNm }) as { name: string; centreNm: number; fwhmNm: number },
);

function lamp(column: string) {
  const table = readTable('sensors/white_led_spd_5nm.csv');
  return {
    wavelengths: table.map((row) => Number(row['wavelength_nm'])),
    values: table.map((row) => Number(row[column])),
  };
}

describe('effective bands', () => {
  it('are the catalogue bands under a lamp that is the same everywhere, or without one', () => {
    const flat = { wavelengths: [300, 830], values: [1, 1] };
    for (const bands of [effectiveBands(EIGHT), effectiveBands(EIGHT, flat)]) {
      bands.forEach((band, i) => {
        expect(Math.abs(band.centreNm - EIGHT[i]!.centreNm)).toBeLessThan(BAND_CENTRE_NM);
        expect(Math.abs(band.fwhmNm - EIGHT[i]!.fwhmNm)).toBeLessThan(BAND_CENTRE_NM);
      });
    }
  });

  it('have rows of 36 that sum to 1, so that a perfect diffuser reads 1', () => {
    for (const { row } of effectiveBands(EIGHT, lamp('CIE_LED-B3'))) {
      expect(row).toHaveLength(36);
      expect(Math.abs(row.reduce((a, b) => a + b, 0) - 1)).toBeLessThan(SAME_ARITHMETIC);
      expect(row.every((w) => w >= 0)).toBe(true);
    }
  });

  it('read a reflectance that is straight between grid points exactly: a ramp reads its value at the centroid', () => {
    for (const { row, centreNm } of effectiveBands(EIGHT.slice(2, 6), lamp('CIE_LED-B3'))) {
      const read = row.reduce((sum, w, i) => sum + w * GRID_NM[i]!, 0);
      expect(Math.abs(read - centreNm)).toBeLessThan(BAND_CENTRE_NM);
    }
  });

  it('move and fade as blue-pumped white lamps make them: the violet band is weak and moves to longer waves', () => {
    // A simulation of such a lamp gave 3.9 % of the strongest band and a move from 415 to 427 nm, and 680 to 666 nm.
    for (const column of ['CIE_LED-B3', 'CIE_LED-B4', 'CIE_LED-B5']) {
      const bands = effectiveBands(EIGHT, lamp(column));
      expect(bands[0]!.centreNm).toBeGreaterThan(420);
      expect(bands[0]!.centreNm).toBeLessThan(435);
      expect(bands[0]!.strength).toBeLessThan(0.12);
      expect(bands[7]!.centreNm).toBeLessThan(675);
      expect(bands[7]!.centreNm).toBeGreaterThan(655);
      expect(Math.max(...bands.map((b) => b.strength))).toBe(1);
    }
  });

  it('agree with centroids of a table integrated another way', () => {
    const spd = lamp('CIE_LED-B3');
    const f5 = EIGHT[4]!;
    let [top, bottom] = [0, 0];
    spd.wavelengths.forEach((nm, i) => {
      const v = spd.values[i]! * Math.exp(-4 * Math.LN2 * ((nm - f5.centreNm) / f5.fwhmNm) ** 2);
      top += v * nm;
      bottom += v;
    });
    expect(Math.abs(effectiveBands([f5], spd)[0]!.centreNm - top / bottom)).toBeLessThan(BAND_CENTRE_NM);
  });

  it('take a response as a head reports it, at even steps', () => {
    const curve = curveOfSteps({ startNm: 500, stepNm: 5, values: [0, 1, 2, 1, 0] });
    const [band] = effectiveBands([{ name: 'V', ...curve }]);
    expect(Math.abs(band!.centreNm - 510)).toBeLessThan(BAND_CENTRE_NM);
  });

  it('come out as the response member of a swatch set', () => {
    const response = responseOf(effectiveBands(EIGHT));
    expect(response.wavelengths).toEqual([...GRID_NM]);
    expect(response.rows).toHaveLength(8);
  });

  it('are refused for a channel that sees nothing, a negative table, or one of two lengths', () => {
    const dark = { wavelengths: [600, 700], values: [1, 1] };
    expect(() => effectiveBands([{ name: 'V', wavelengths: [380, 400], values: [1, 1] }], dark)).toThrow(
      'V sees nothing',
    );
    expect(() => effectiveBands([{ name: 'V', wavelengths: [380, 400], values: [1, -1] }])).toThrow(
      'negative',
    );
    expect(() => effectiveBands([{ name: 'V', wavelengths: [380, 400], values: [1] }])).toThrow(
      'one value for each',
    );
  });
});
