import * as fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { changeSettings } from '../../web/src/state/settings.ts';
import { grams, num, parseNumber, signed } from '../../web/src/text/numbers.ts';

afterEach(() => changeSettings({ language: 'en' }));

describe('parseNumber', () => {
  it('refuses what is not one number', () => {
    for (const text of [
      '',
      ' ',
      'two',
      '1,2,3',
      '1.2.3',
      '1.200,5',
      '1,200.5',
      '--1',
      '3g',
      'Infinity',
      'NaN',
      '.',
    ]) {
      expect(parseNumber(text), text).toBeUndefined();
    }
  });

  it('takes a decimal comma, a decimal point, a real minus, a per cent sign and thin blanks', () => {
    expect(parseNumber('3,2')).toBe(3.2);
    expect(parseNumber(' 3.2 ')).toBe(3.2);
    expect(parseNumber('−0,4')).toBe(-0.4);
    expect(parseNumber('12 %')).toBe(12);
    expect(parseNumber('1 200,5')).toBe(1200.5);
    expect(parseNumber(',5')).toBe(0.5);
    expect(parseNumber('1e-3')).toBe(0.001);
  });
});

describe('num', () => {
  it('says nothing of a number that is none', () => {
    expect(num(Number.NaN)).toBe('–');
    expect(num(Infinity)).toBe('–');
  });

  it('never shows minus nothing', () => {
    expect(num(-0.04, 1)).toBe('0.0');
    expect(signed(-0.04, 1)).toBe('0.0');
  });

  it('uses the comma where German is read', () => {
    changeSettings({ language: 'de' });
    expect(num(-3.25, 2)).toBe('−3,25');
    expect(grams(2, 0.01)).toBe('2,00 g');
  });

  it.each(['en', 'de'] as const)('what it writes in %s, parseNumber reads back', (language) => {
    changeSettings({ language });
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.integer({ min: 0, max: 4 }), (x, d) => {
        expect(parseNumber(num(x, d))).toBe(Number(x.toFixed(d)) + 0);
      }),
    );
  });
});
