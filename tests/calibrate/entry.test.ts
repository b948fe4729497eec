import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { readNumberList, readPairs } from '../../src/calibrate/entry/number-list.ts';
import { readTyped } from '../../src/calibrate/entry/read-typed.ts';
import type { EntryOutcome, TypedEntry } from '../../src/calibrate/entry/typed-entry.ts';
import { ILLUMINANTS, OBSERVERS } from '../../src/colour/illuminant.ts';
import { labOf } from '../../src/colour/lab.ts';
import { tristimulusWeights } from '../../src/colour/tristimulus.ts';
import { xyzOf } from '../../src/colour/xyz.ts';
import { whitePoint } from '../../src/colour/white-point.ts';
import { readJson } from '../fixtures/read-table.ts';
import { OTHER_WEIGHTS_TRISTIMULUS, SAME_ARITHMETIC } from '../tolerances.ts';

const taken = (outcome: EntryOutcome) => {
  if (outcome.outcome !== 'reading') throw new Error(`Asked: ${outcome.sentence}`);
  return outcome;
};
const spectrum = (change: Partial<Extract<TypedEntry, { kind: 'reflectance' }>> = {}): TypedEntry => ({
  kind: 'reflectance',
  geometry: '45/0',
  scale: '0-1',
  wavelengths: [400, 550, 700],
  values: [0.1, 0.5, 0.9],
  ...change,
});

describe('numbers as people type them', () => {
  it.each([
    ['0.1 0.2 0.3', [0.1, 0.2, 0.3]],
    ['0.1, 0.2, 0.3', [0.1, 0.2, 0.3]],
    ['0.1,0.2,0.3', [0.1, 0.2, 0.3]],
    ['0,1 0,2\t0,3', [0.1, 0.2, 0.3]],
    ['0,1; 0,2;0,3', [0.1, 0.2, 0.3]],
    ['0,1, 0,2, 0,3,', [0.1, 0.2, 0.3]],
    ['12,5 %\n13 %', [12.5, 13]],
    ['−0.5 +2 1e-3 .5', [-0.5, 2, 0.001, 0.5]],
    ['400 12,5\r\n410 13', [400, 12.5, 410, 13]],
  ])('%j', (text, numbers) => {
    expect(readNumberList(text).numbers).toEqual(numbers);
  });

  it('says how a comma was read, and refuses one that can be read two ways', () => {
    expect(readNumberList('0,5').assumed).toEqual(['The comma was read as the decimal sign.']);
    expect(readNumberList('0.5 0.6').assumed).toEqual([]);
    expect(readNumberList('0.5,0.6').assumed[0]).toContain('separator');
    expect(() => readNumberList('1,2,3')).toThrow('two ways');
    expect(() => readNumberList('0.5 abc')).toThrow('"abc" is no number');
    expect(() => readNumberList('  ')).toThrow('No number was typed');
  });

  it('comes back from any way of writing numbers', () => {
    const number = fc.double({ min: -100, max: 1000, noNaN: true }).map((x) => Number(x.toFixed(4)));
    const style = fc.constantFrom([' ', '.'], ['; ', ','], ['\n', ','], [', ', '.'], ['\t', '.']);
    fc.assert(
      fc.property(fc.array(number, { minLength: 1, maxLength: 20 }), style, (numbers, [between, point]) => {
        const text = numbers.map((x) => String(x).replace('.', point!)).join(between);
        expect(readNumberList(text).numbers.map((x) => x + 0)).toEqual(numbers.map((x) => x + 0));
      }),
    );
  });

  it('pairs wavelengths with values', () => {
    expect(readPairs('400 0,1\n410 0,2')).toMatchObject({ wavelengths: [400, 410], values: [0.1, 0.2] });
    expect(() => readPairs('400 0.1 410')).toThrow('3 numbers do not pair up');
  });
});

describe('a typed spectrum', () => {
  it('is the same reading in 0 to 1 and in per cent', () => {
    const one = taken(readTyped(spectrum()));
    const hundred = taken(readTyped(spectrum({ scale: 'percent', values: [10, 50, 90] })));
    expect(hundred.values.map((v) => Number(v.toFixed(12)))).toEqual(one.values);
    expect(one.form).toEqual({ kind: 'spectral', geometry: '45/0', wavelengths: [400, 550, 700] });
    expect(one.assumed).toEqual([]);
  });

  it('with no scale named is per cent only where it can be nothing else, and says so; else it asks', () => {
    const sure = taken(readTyped(spectrum({ scale: undefined, values: [10, 50, 90] })));
    expect(sure.values[1]).toBeCloseTo(0.5, 12);
    expect(sure.assumed[0]).toContain('Taken as per cent, because 90 is too much for 0 to 1');
    const asked = readTyped(spectrum({ scale: undefined, values: [0.1, 0.5, 0.9] }));
    expect(asked).toMatchObject({ outcome: 'question', choices: ['0-1', 'percent'] });
  });

  it('on the wrong scale is refused, or noticed where it could be right', () => {
    expect(() => readTyped(spectrum({ values: [10, 50, 90] }))).toThrow(
      /10 at 400 nm .* name the right scale/,
    );
    expect(taken(readTyped(spectrum({ scale: 'percent' }))).assumed[0]).toContain('very dark');
    expect(() => readTyped(spectrum({ scale: 'percent', values: [10, 50, 900] }))).toThrow('900 at 700 nm');
  });

  it('may have wavelengths of any spacing and order; twice the same, micrometres and too few values are refused', () => {
    const turned = taken(readTyped(spectrum({ wavelengths: [700, 400, 550], values: [0.9, 0.1, 0.5] })));
    expect(turned.values).toEqual([0.1, 0.5, 0.9]);
    expect(turned.assumed[0]).toContain('sorted');
    expect(() => readTyped(spectrum({ wavelengths: [400, 400, 700] }))).toThrow('400 nm is there twice');
    expect(() => readTyped(spectrum({ wavelengths: [0.4, 0.55, 0.7] }))).toThrow('give nm');
    expect(() => readTyped(spectrum({ wavelengths: [800, 900, 1000] }))).toThrow('is needed');
    expect(() => readTyped(spectrum({ values: [0.1] }))).toThrow('one value for each');
    const short = taken(readTyped(spectrum({ wavelengths: [420, 550, 680] })));
    expect(short.assumed[0]).toContain('420 and 680 nm');
  });

  it('takes a little over 1 and a little below 0, and keeps them as they are', () => {
    const { values } = taken(readTyped(spectrum({ values: [-0.003, 0.5, 1.015] })));
    expect(values).toEqual([-0.003, 0.5, 1.015]);
    expect(() => readTyped(spectrum({ values: [-0.1, 0.5, 0.9] }))).toThrow('-0.1 at 400 nm');
    expect(() => readTyped(spectrum({ values: [Number.NaN, 0.5, 0.9] }))).toThrow('Value 1 is not a number');
  });

  it('without a known geometry is refused', () => {
    expect(() => readTyped(spectrum({ geometry: '0/45' as never }))).toThrow('Geometry "0/45" is not known');
  });
});

describe('typed bands', () => {
  const bands = [
    { name: 'F1', centre: 415, fwhm: 26 },
    { centre: 445, fwhm: 30 },
  ];

  it('become a bands reading', () => {
    const read = taken(
      readTyped({ kind: 'bands', geometry: '45/0', scale: 'percent', bands, values: [10, 20] }),
    );
    expect(read.form).toEqual({ kind: 'bands', geometry: '45/0', bands });
    expect(read.values).toEqual([0.1, 0.2]);
  });

  it('are refused with a centre in metres, and asked about without a scale', () => {
    const metres = [{ centre: 4.15e-7, fwhm: 2.6e-8 }];
    expect(() =>
      readTyped({ kind: 'bands', geometry: '45/0', scale: '0-1', bands: metres, values: [0.1] }),
    ).toThrow('in nm');
    expect(readTyped({ kind: 'bands', geometry: '45/0', bands, values: [0.1, 0.2] }).outcome).toBe(
      'question',
    );
  });
});

describe('typed XYZ and Lab', () => {
  const at = { geometry: '45/0', illuminant: 'D65', observer: '10deg' } as const;

  it('the white point is 1, 1, 1 under every white, as XYZ and as L* 100', () => {
    for (const illuminant of ILLUMINANTS) {
      for (const observer of OBSERVERS) {
        const n = whitePoint(`${illuminant}/${observer}`);
        const where = { geometry: '45/0', illuminant, observer } as const;
        for (const entry of [
          { kind: 'XYZ', ...where, scale: '100', values: [n.X, n.Y, n.Z] },
          { kind: 'XYZ', ...where, scale: '1', values: [n.X / 100, n.Y / 100, n.Z / 100] },
          { kind: 'Lab', ...where, values: [100, 0, 0] },
        ] as TypedEntry[]) {
          for (const v of taken(readTyped(entry)).values)
            expect(Math.abs(v - 1)).toBeLessThan(SAME_ARITHMETIC);
        }
      }
    }
  });

  it('Lab and XYZ of one colour are one reading', () => {
    const xyz = { X: 20, Y: 30, Z: 15, white: 'D65/10deg' } as const;
    const lab = labOf(xyz);
    const one = taken(readTyped({ kind: 'XYZ', ...at, scale: '100', values: [20, 30, 15] }));
    const two = taken(readTyped({ kind: 'Lab', ...at, values: [lab.L, lab.a, lab.b] }));
    one.values.forEach((v, i) => expect(Math.abs(two.values[i]! - v)).toBeLessThan(SAME_ARITHMETIC));
    expect(two.form).toEqual({ kind: 'tristimulus', ...at });
  });

  it('are the numbers a swatch set holds: XYZ of a known spectrum against the fixture weights of another program', () => {
    const set = readJson('paint/transport-xyz.json') as {
      instrument: { response: { wavelengths: number[]; rows: number[][] } };
      checks: { truth: number[] }[];
    };
    const { wavelengths, rows } = set.instrument.response;
    const weights = tristimulusWeights('D65/2deg', wavelengths);
    for (const { truth } of set.checks.slice(0, 40)) {
      const { X, Y, Z } = xyzOf(truth, weights);
      const typed = taken(
        readTyped({
          kind: 'XYZ',
          geometry: '45/0',
          illuminant: 'D65',
          observer: '2deg',
          scale: '100',
          values: [X, Y, Z],
        }),
      );
      rows.forEach((row, c) => {
        const fraction = row.reduce((sum, w, i) => sum + w * truth[i]!, 0);
        expect(Math.abs(typed.values[c]! - fraction)).toBeLessThan(OTHER_WEIGHTS_TRISTIMULUS);
      });
    }
  });

  it('without a scale is told where certain, asked where not', () => {
    const sure = taken(readTyped({ kind: 'XYZ', ...at, values: [20, 30, 15] }));
    expect(sure.assumed[0]).toContain('Y of white at 100');
    expect(readTyped({ kind: 'XYZ', ...at, values: [0.2, 0.3, 0.15] })).toMatchObject({
      outcome: 'question',
      choices: ['1', '100'],
    });
  });

  it('without illuminant or observer, with a wrong count, or as no colour at all, is refused', () => {
    const lab =
      (values: number[], change = {}) =>
      () =>
        readTyped({ kind: 'Lab', ...at, values, ...change } as TypedEntry);
    expect(lab([50, 0, 0], { observer: undefined })).toThrow('illuminant and observer');
    expect(lab([50, 0, 0], { illuminant: 'D60' })).toThrow('"D60" is not known');
    expect(lab([50, 0])).toThrow('three numbers');
    expect(lab([-5, 0, 0])).toThrow('L* is -5');
    expect(lab([20, 120, 80])).toThrow('no colour a paint can have');
    expect(() => readTyped({ kind: 'XYZ', ...at, scale: '1', values: [20, 30, 15] })).toThrow(
      'name the right scale',
    );
  });
});
