/** How surely a rung's proportions are known from its weighing. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { ladderRatios, lnRatiosOf, straightRatioSigma } from '../../src/calibrate/ladder/ratios.ts';
import { PRINTED_RATIO_SIGMA, SAME_ARITHMETIC, SCATTER_OF_TRIALS } from '../tolerances.ts';
import { seededUniform } from './seeded-normal.ts';

describe('errors of weighed ratios', () => {
  it('are those of the worked figures: 0.01 g and 0.001 g scales, 2 g and 5 g in all', () => {
    const table: [number, number, number[]][] = [
      [0.01, 2, [0.6, 1.0, 3.5]],
      [0.01, 5, [0.2, 0.4, 1.4]],
      [0.001, 2, [0.06, 0.11, 0.35]],
    ];
    for (const [d, total, perCents] of table) {
      [1, 4, 16].forEach((k, i) => {
        const paint = total / (1 + k);
        const sigma = 100 * straightRatioSigma(paint, paint * k, d);
        expect(Math.abs(sigma / perCents[i]! - 1)).toBeLessThan(PRINTED_RATIO_SIGMA);
      });
    }
  });

  it('come from masses, straight, and rungs so made do not hang together', () => {
    const ratios = ladderRatios(
      [
        { id: 'masstone', masses: { blue: 2 } },
        { id: '1:1', masses: { blue: 1, white: 1 } },
        { id: '1:4', masses: { blue: 0.4, white: 1.6, other: 0 } },
      ],
      { resolution: 0.01 },
    );
    const { ids, lnRatio, covariance } = lnRatiosOf(ratios, 'blue', 'white');
    expect(ids).toEqual(['1:1', '1:4']);
    expect(lnRatio[1]).toBeCloseTo(-Math.log(4), 12);
    expect(Math.sqrt(covariance[1]![1]!)).toBeCloseTo(straightRatioSigma(0.4, 1.6, 0.01), 12);
    expect(covariance[0]![1]).toBe(0);
    expect(ratios.swatches[2]!.shares.get('blue')).toBeCloseTo(0.2, 12);
    expect(ratios.swatches[2]!.shares.has('other')).toBe(false);
  });

  it('give the stated relative sigma to every straight ratio, and say when the usual 2 % was assumed', () => {
    const swatches = [{ id: 'a', masses: { blue: 1, white: 7 } }];
    const stated = lnRatiosOf(ladderRatios(swatches, { relativeSigma: 0.03 }), 'blue', 'white');
    expect(Math.sqrt(stated.covariance[0]![0]!)).toBeCloseTo(0.03, 12);
    expect(ladderRatios(swatches, { relativeSigma: 0.03 }).assumed).toBe(false);
    const assumed = ladderRatios(swatches, undefined);
    expect(assumed.assumed).toBe(true);
    expect(Math.sqrt(lnRatiosOf(assumed, 'blue', 'white').covariance[0]![0]!)).toBeCloseTo(0.02, 12);
  });

  const serial = [
    {
      id: '1:1',
      made: [
        { tube: 'blue', grams: 1.5 },
        { tube: 'white', grams: 1.5 },
      ],
    },
    {
      id: '1:4',
      made: [
        { from: '1:1', grams: 1 },
        { tube: 'white', grams: 1.5 },
      ],
    },
    {
      id: '1:16',
      made: [
        { from: '1:4', grams: 0.6 },
        { tube: 'white', grams: 1.44 },
      ],
    },
  ];

  it('of a serial dilution have the nominal ratios and hang together', () => {
    const { lnRatio, covariance } = lnRatiosOf(ladderRatios(serial, { resolution: 0.01 }), 'blue', 'white');
    [1, 4, 16].forEach((k, i) => expect(lnRatio[i]).toBeCloseTo(-Math.log(k), 12));
    expect(covariance[0]![1]!).toBeGreaterThan(0);
    expect(covariance[1]![2]!).toBeGreaterThan(0);
    expect(covariance[1]![2]).toBeCloseTo(covariance[2]![1]!, 12);
  });

  it('of a serial dilution agree with weighing it 20 000 times on a scale that rounds', () => {
    const uniform = seededUniform(11);
    const d = 0.01;
    // A net mass: the difference of two readings, each off by up to half a step.
    const weigh = (grams: number): number => grams + (uniform() - uniform()) * d;
    const trials = 20_000;
    const sums = [0, 0, 0];
    const products = [0, 1, 2].map(() => [0, 0, 0]);
    for (let t = 0; t < trials; t++) {
      let [p, w] = [weigh(1.5), weigh(1.5)];
      const seen = [Math.log(p / w)];
      for (const [taken, white] of [
        [1, 1.5],
        [0.6, 1.44],
      ] as const) {
        const f = weigh(taken) / (p + w);
        [p, w] = [p * f, w * f + weigh(white)];
        seen.push(Math.log(p / w));
      }
      seen.forEach((v, i) => (sums[i]! += v));
      seen.forEach((v, i) => seen.forEach((u, j) => (products[i]![j]! += v * u)));
    }
    const { covariance } = lnRatiosOf(ladderRatios(serial, { resolution: d }), 'blue', 'white');
    for (let i = 0; i < 3; i++) {
      for (let j = 0; j < 3; j++) {
        const seen = products[i]![j]! / trials - (sums[i]! / trials) * (sums[j]! / trials);
        const scale = Math.sqrt(covariance[i]![i]! * covariance[j]![j]!);
        expect(Math.abs(seen - covariance[i]![j]!) / scale).toBeLessThan(SCATTER_OF_TRIALS);
      }
    }
  });

  it('of a pile do not depend on the unit, nor on a pile standing after what is made of it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 100, noNaN: true }), (unit) => {
        const scaled = serial.map((s) => ({
          ...s,
          made: s.made.map((m) => ({ ...m, grams: m.grams * unit })),
        }));
        const one = lnRatiosOf(ladderRatios(serial, { resolution: 0.01 }), 'blue', 'white');
        const two = lnRatiosOf(
          ladderRatios(scaled.toReversed(), { resolution: 0.01 * unit }),
          'blue',
          'white',
        );
        expect(two.ids).toEqual(one.ids.toReversed());
        one.covariance.forEach((row, i) =>
          row.forEach((v, j) =>
            expect(Math.abs(two.covariance[2 - i]![2 - j]! - v)).toBeLessThan(SAME_ARITHMETIC),
          ),
        );
      }),
    );
  });

  it('are refused for a pile made of an unknown one, of itself, or of nothing', () => {
    const made = (from: string) => [{ from, grams: 1 }];
    expect(() => ladderRatios([{ id: 'a', made: made('b') }], undefined)).toThrow(
      '"b", which is not in the document',
    );
    const circle = [
      { id: 'a', made: made('b') },
      { id: 'b', made: made('a') },
    ];
    expect(() => ladderRatios(circle, undefined)).toThrow('made from itself');
    expect(() => ladderRatios([{ id: 'a', masses: { blue: 0 } }], undefined)).toThrow('holds no paint');
  });
});
