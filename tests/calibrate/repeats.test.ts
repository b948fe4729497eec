import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import type { Lab } from '../../src/colour/lab.ts';
import { EXPECTED_SCATTER, judgeRepeats, scatterAt } from '../../src/calibrate/repeats/judge-repeats.ts';
import { mcdm, meanLab } from '../../src/calibrate/repeats/mcdm.ts';
import { median, robustSd, robustSdOfFew } from '../../src/calibrate/repeats/robust.ts';
import { PRINTED_6_DECIMALS } from '../tolerances.ts';
import { seededNormal } from './seeded-normal.ts';

const channels = Array.from({ length: 8 }, (_, i) => `F${i + 1}`);
const flat = (R: number) => channels.map(() => R);

describe('MCDM (ASTM E2214)', () => {
  const white = 'D65/10deg' as const;
  const labs: Lab[] = [
    [50, 10, 20],
    [50.2, 10.1, 19.9],
    [49.9, 9.8, 20.3],
    [50.1, 10.05, 20.1],
    [49.8, 10.05, 19.7],
  ].map(([L, a, b]) => ({ L: L!, a: a!, b: b!, white }));

  it('of the worked example is .226624 (dE*ab) and .191891 (CIEDE2000)', () => {
    expect(meanLab(labs).L).toBeCloseTo(50, 12);
    expect(Math.abs(mcdm(labs, 'dE*ab') - 0.226624)).toBeLessThan(PRINTED_6_DECIMALS);
    expect(Math.abs(mcdm(labs) - 0.191891)).toBeLessThan(PRINTED_6_DECIMALS);
  });

  it('of one reading is 0; of none, or under two whites, there is none', () => {
    expect(mcdm(labs.slice(0, 1))).toBe(0);
    expect(() => mcdm([])).toThrow('at least one');
    expect(() => mcdm([labs[0]!, { L: 50, a: 0, b: 0, white: 'A/10deg' }])).toThrow('different whites');
  });
});

describe('median and MAD', () => {
  it('stand a wild value', () => {
    expect(median([3, 1, 2])).toBe(2);
    expect(median([1, 2, 3, 4])).toBe(2.5);
    expect(robustSd([1, 2, 3, 4, 1e9])).toBeCloseTo(1.4826, 12);
    expect(() => median([])).toThrow('at least one');
    expect(robustSdOfFew([5])).toBe(0);
  });

  it('of few normal values are right on average', () => {
    const normal = seededNormal(7);
    for (const n of [3, 5, 8, 15]) {
      let sum = 0;
      for (let i = 0; i < 4000; i++) sum += robustSdOfFew(Array.from({ length: n }, normal));
      // The published factors are rounded to three digits; 4000 trials leave about 1 %.
      expect(Math.abs(sum / 4000 - 1)).toBeLessThan(0.05);
    }
  });
});

describe('accepting repeats', () => {
  it('starts with nothing, and asks for three', () => {
    const verdict = judgeRepeats([], { channels });
    expect(verdict).toMatchObject({ accepted: false, more: 3, kept: [], sentBack: [] });
    expect(verdict.sentence).toBe('No reading yet; take 3.');
  });

  it('takes three that agree', () => {
    const verdict = judgeRepeats([flat(0.3), flat(0.301), flat(0.2995)], { channels });
    expect(verdict).toMatchObject({ accepted: true, more: 0, kept: [0, 1, 2] });
    expect(verdict.median[0]).toBe(0.3);
  });

  it('sends back the one that is far out, with its reason, and asks for one in its place', () => {
    const verdict = judgeRepeats([flat(0.3), flat(0.33), flat(0.301)], { channels });
    expect(verdict.kept).toEqual([0, 2]);
    expect(verdict.sentBack).toHaveLength(1);
    expect(verdict.sentBack[0]).toMatchObject({ index: 1 });
    expect(verdict.sentBack[0]!.reason).toMatch(
      /Reading 2 is sent back: lighter than the others, .* where 3 is allowed/,
    );
    expect(verdict).toMatchObject({ accepted: false, more: 1 });
  });

  it('finds a smear in one band alone', () => {
    const smeared = flat(0.3);
    smeared[2] = 0.27;
    const verdict = judgeRepeats([flat(0.3), flat(0.3005), smeared, flat(0.2995)], { channels });
    expect(verdict.sentBack.map((s) => s.index)).toEqual([2]);
    expect(verdict.sentBack[0]!.reason).toContain('darker than the others, mostly in F3');
  });

  it('never lets a reading that is no number pass', () => {
    const verdict = judgeRepeats([flat(0.3), flat(Number.NaN), flat(0.3), flat(0.3)], { channels });
    expect(verdict.kept).toEqual([0, 2, 3]);
    expect(verdict.accepted).toBe(true);
    expect(verdict.sentBack[0]!.reason).toContain('no number in F1');
    const two = judgeRepeats([flat(Number.NaN), flat(0.3)], { channels });
    expect(two).toMatchObject({ kept: [1], more: 2 });
  });

  it('calls neither of two the odd one out, nor one of two camps', () => {
    expect(judgeRepeats([flat(0.3), flat(0.4)], { channels }).sentBack).toEqual([]);
    expect(judgeRepeats([flat(0.3), flat(0.4)], { channels }).accepted).toBe(false);
    const camps = judgeRepeats([flat(0.3), flat(0.301), flat(0.4), flat(0.401)], { channels });
    expect(camps.sentBack).toEqual([]);
    expect(camps.accepted).toBe(false);
    expect(camps.kept).toHaveLength(4);
  });

  it('asks for (s/e)^2 readings when they scatter (ASTM E1345)', () => {
    // Standard deviation 0.008 in every channel, wanted error 0.004: four readings.
    const step = 0.008;
    const three = [flat(0.3 - step), flat(0.3), flat(0.3 + step)];
    const wide = { sigma: 0.02, relative: 0 };
    const verdict = judgeRepeats(three, { channels, expected: wide, error: { sigma: 0.004, relative: 0 } });
    expect(verdict.more).toBe(1);
    const loose = judgeRepeats(three, { channels, expected: wide, error: { sigma: 0.005, relative: 0 } });
    expect(loose.accepted).toBe(true);
  });

  it('loses nothing: every reading is either kept or sent back, once', () => {
    const reading = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 8, maxLength: 8 });
    fc.assert(
      fc.property(fc.array(reading, { maxLength: 9 }), (readings) => {
        const verdict = judgeRepeats(readings, { channels });
        const seen = [...verdict.kept, ...verdict.sentBack.map((s) => s.index)].toSorted((a, b) => a - b);
        expect(seen).toEqual(readings.map((_, i) => i));
        expect(verdict.sentBack.length * 2 < Math.max(1, readings.length)).toBe(true);
      }),
    );
  });

  it('seldom sends back an honest reading, and finds one off by eight times the scatter', () => {
    const normal = seededNormal(99);
    let wrong = 0;
    let missed = 0;
    const trials = 400;
    for (let t = 0; t < trials; t++) {
      // Placing moves all channels together; noise of its own is a fifth of that.
      const honest = () => {
        const place = normal();
        return channels.map((_, c) => {
          const R = 0.05 + 0.1 * c;
          return R + scatterAt(EXPECTED_SCATTER, R) * (0.98 * place + 0.2 * normal());
        });
      };
      const readings = Array.from({ length: 5 }, honest);
      wrong += judgeRepeats(readings, { channels }).sentBack.length;
      const off = honest().map((R) => R + 8 * scatterAt(EXPECTED_SCATTER, R));
      if (!judgeRepeats([...readings.slice(1), off], { channels }).sentBack.some((s) => s.index === 4))
        missed++;
    }
    expect(wrong / (5 * trials)).toBeLessThan(0.01);
    expect(missed / trials).toBeLessThan(0.06);
  });

  it('refuses a reading with another number of channels', () => {
    expect(() => judgeRepeats([[0.1]], { channels })).toThrow('8 are wanted');
  });
});
