import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../src/colour/ciede2000.ts';
import { DEFAULT_WHITE } from '../../src/colour/illuminant.ts';
import { labOfReflectance } from '../../src/colour/lab.ts';
import { tristimulusWeights } from '../../src/colour/tristimulus.ts';
import { responseRows } from '../../src/fit/observe/response-rows.ts';
import { matchColour, predictMix, spectrumOfReading } from '../../src/mix/index.ts';
import { inventedPalette } from './invented-palette.ts';

const palette = inventedPalette();
const bands = responseRows({
  kind: 'bands',
  geometry: '45/0',
  bands: [415, 445, 480, 515, 555, 590, 630, 680].map((centre) => ({ centre, fwhm: 30 })),
});
const tristimulus = responseRows({ kind: 'tristimulus', geometry: '45/0', illuminant: 'D50', observer: '2' });
const read = (rows: readonly Float64Array[], R: ArrayLike<number>): number[] =>
  rows.map((row) => row.reduce((s, w, i) => s + w * R[i]!, 0));
const weights = tristimulusWeights(DEFAULT_WHITE);

describe('a reading through an instrument', () => {
  it('is refused in one sentence when it does not fit its instrument', () => {
    expect(() => spectrumOfReading(palette, { values: [0.1], rows: bands })).toThrow(
      /1 numbers and its instrument 8 channels/,
    );
    expect(() => spectrumOfReading(palette, { values: bands.map(() => 40), rows: bands })).toThrow(
      /Channel 1 reads 40/,
    );
    expect(() => spectrumOfReading(palette, { values: [0.5], rows: [[1]] })).toThrow(
      /1 weights; the grid has 36/,
    );
  });

  it.each([
    ['eight bands', bands, 0.2],
    ['XYZ under another light', tristimulus, 2],
  ])('through %s gives the colour of a mix of the palette back', (_, rows, within) => {
    for (const made of [
      { white: 3, 'deep-blue': 1, 'yellow-earth': 0.5 },
      { white: 1, 'warm-red': 1, 'golden-yellow': 1 },
      { 'dark-earth': 1, 'green-blue': 0.1, white: 0.6 },
    ]) {
      const { reflectance, lab } = predictMix(palette, made);
      const { spectrum, misfit } = spectrumOfReading(palette, { values: read(rows, reflectance), rows });
      expect(misfit).toBeLessThan(0.5);
      read(rows, spectrum).forEach((v, k) => expect(v).toBeCloseTo(read(rows, reflectance)[k]!, 4));
      expect(ciede2000(labOfReflectance(spectrum, weights), lab)).toBeLessThan(within);
      expect(matchColour(palette, { spectrum }).reached).toBe(true);
    }
  });

  it('of something no mix of the tubes is: reads as given all the same', () => {
    const odd = Float64Array.from({ length: 36 }, (_, i) => 0.4 + 0.2 * Math.sin(i));
    const { spectrum, misfit } = spectrumOfReading(palette, { values: read(bands, odd), rows: bands });
    expect(misfit).toBeGreaterThan(2);
    read(bands, spectrum).forEach((v, k) => expect(Math.abs(v - read(bands, odd)[k]!)).toBeLessThan(0.01));
  });
});
