import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  type LadderProgress,
  type RungProgress,
  ladderDone,
  nextStep,
} from '../../src/calibrate/ladder/next-step.ts';
import { planLadder } from '../../src/calibrate/ladder/plan.ts';
import type { PlanRequest } from '../../src/calibrate/ladder/plan-shapes.ts';
import { ladderRatios, lnRatiosOf, straightRatioSigma } from '../../src/calibrate/ladder/ratios.ts';
import { parseRungName, rungName } from '../../src/calibrate/ladder/rung-name.ts';
import { massesAgainstName, wrongWayRound } from '../../src/calibrate/ladder/wrong-way-round.ts';
import { PRINTED_RATIO_SIGMA, SAME_ARITHMETIC, SCATTER_OF_TRIALS } from '../tolerances.ts';
import { seededUniform } from './seeded-normal.ts';

describe('names of rungs', () => {
  it('are read and written', () => {
    expect(parseRungName('masstone')).toEqual({ paint: 1, white: 0 });
    expect(parseRungName(' 1 : 2,5 ')).toEqual({ paint: 1, white: 2.5 });
    for (const bad of ['', '1', '0:4', '1:-4', 'tint', '1:4:2']) expect(parseRungName(bad)).toBeUndefined();
    expect([0, 1, 4, 0.5, 2.5, 0.4].map(rungName)).toEqual([
      'masstone',
      '1:1',
      '1:4',
      '2:1',
      '1:2.5',
      '1:0.4',
    ]);
    expect(() => rungName(-1)).toThrow('zero or more');
  });
});

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

describe('the weighing plan', () => {
  const request: PlanRequest = {
    scaleResolution: 0.01,
    smallestPour: 0.2,
    perRung: 2,
    wantedSigma: 0.01,
    method: 'least paint',
    whiteParts: [0, 1, 4, 16],
  };

  it('is refused without a masstone, with a rung twice, and for sizes that are none', () => {
    const plan = (change: Partial<PlanRequest>) => () => planLadder({ ...request, ...change });
    expect(plan({ whiteParts: [1, 4] })).toThrow('needs the masstone');
    expect(plan({ whiteParts: [0, 4, 4] })).toThrow('1:4 is named twice');
    expect(plan({ whiteParts: [0, -1] })).toThrow('zero or more');
    expect(plan({ scaleResolution: 0 })).toThrow('scale step is 0 g');
    expect(plan({ wantedSigma: 0 })).toThrow('0.05 % to 20 %');
  });

  it('of a masstone alone takes just that', () => {
    const plan = planLadder({ ...request, whiteParts: [0] });
    expect([plan.tubeGrams, plan.whiteGrams, plan.worstRelativeSigma]).toEqual([2, 0, 0]);
  });

  it('straight, of 2 g and no wish for better, is the table of worked figures again', () => {
    const plan = planLadder({ ...request, method: 'straight', smallestPour: 0.05, wantedSigma: 0.2 });
    const [, , quarter] = plan.rungs;
    expect(quarter!.ratioSigma).toBeCloseTo(straightRatioSigma(0.4, 1.6, 0.01), 12);
    // 2/17 g rounds up to 0.12 g.
    expect(plan.rungs[3]!.pours[0]).toEqual({ kind: 'paint', grams: 0.12 });
    expect(plan.rungs[3]!.ratioSigma).toBeCloseTo(straightRatioSigma(0.12, 1.92, 0.01), 12);
  });

  it('reaches the wanted error, leaves every drawdown its paint, and pours what can be poured', () => {
    const parts = fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(
        parts,
        fc.constantFrom('straight', 'serial', 'least paint'),
        fc.constantFrom(0.1, 0.01, 0.001),
        fc.constantFrom(0.005, 0.01, 0.03),
        fc.constantFrom(0.1, 0.5),
        (tints, method, scaleResolution, wantedSigma, smallestPour) => {
          const plan = planLadder({
            scaleResolution,
            smallestPour,
            perRung: 2,
            wantedSigma,
            method,
            whiteParts: [0, ...tints],
          });
          const reached = plan.worstRelativeSigma <= wantedSigma;
          // Out of reach only where it would take more paint than anyone mixes, and then the plan says so.
          expect(reached || plan.tubeGrams + plan.whiteGrams > 300).toBe(true);
          expect(plan.sentences.some((s) => s.includes('is not reached'))).toBe(!reached);
          const totals = { paint: 0, white: 0, rung: 0 };
          for (const rung of plan.rungs) {
            // A pour is rounded to the scale: the pile may be short by half a step of white.
            expect(rung.leftGrams).toBeGreaterThanOrEqual(2 - scaleResolution / 2 - 1e-9);
            for (const pour of rung.pours) {
              totals[pour.kind] += pour.grams;
              expect(pour.grams).toBeGreaterThanOrEqual(smallestPour - scaleResolution / 2 - 1e-9);
              expect(
                Math.abs(pour.grams / scaleResolution - Math.round(pour.grams / scaleResolution)),
              ).toBeLessThan(1e-6);
            }
            const nominal = 1 / (1 + rung.whiteParts);
            expect(Math.abs(rung.share / nominal - 1)).toBeLessThan(0.5);
          }
          const made = plan.rungs.map((rung) => ({
            id: rung.name,
            made: rung.pours.map((pour) =>
              pour.kind === 'rung'
                ? { from: pour.rung, grams: pour.grams }
                : { tube: pour.kind, grams: pour.grams },
            ),
          }));
          const weighed = lnRatiosOf(ladderRatios(made, { resolution: scaleResolution }), 'paint', 'white');
          plan.rungs.slice(1).forEach((rung, i) => {
            expect(rung.ratioSigma / Math.sqrt(weighed.covariance[i]![i]!)).toBeCloseTo(1, 9);
          });
          expect(totals.paint).toBeCloseTo(plan.tubeGrams, 6);
          expect(totals.white).toBeCloseTo(plan.whiteGrams, 6);
          const left = plan.rungs.reduce((sum, r) => sum + r.leftGrams, 0);
          expect(left).toBeCloseTo(plan.tubeGrams + plan.whiteGrams, 6);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('for least paint takes no more than either plain way', () => {
    const cost = (method: PlanRequest['method']) => {
      const plan = planLadder({ ...request, method });
      return plan.tubeGrams + plan.whiteGrams;
    };
    const least = cost('least paint');
    expect(least).toBeLessThanOrEqual(cost('straight') + 1e-9);
    expect(least).toBeLessThanOrEqual(cost('serial') * 1.01);
    // The figures docs/calibration.md names.
    expect(least.toFixed(1)).toBe('8.0');
    expect(cost('straight').toFixed(1)).toBe('13.4');
  });

  it('names the rung that is least sure and the scale that makes it so', () => {
    const { sentences } = planLadder({ ...request, method: 'straight' });
    expect(sentences.join(' ')).toMatch(/least sure: its ratio is good to .* 0\.01 g/);
  });
});

describe('masses the wrong way round', () => {
  it('are told by the name before anything is read', () => {
    expect(massesAgainstName('1:4', 1.61, 0.4)).toMatchObject({ swapped: true });
    expect(massesAgainstName('1:4', 0.4, 1.61)).toMatchObject({ swapped: false, sentence: '' });
    expect(massesAgainstName('1:1', 1.1, 0.9)).toBeUndefined();
    expect(massesAgainstName('masstone', 1, 1)).toBeUndefined();
    expect(massesAgainstName('my tint', 4, 1)).toBeUndefined();
  });

  it('are told by what the swatch reads like, and not mistaken for another slip', () => {
    const entered = Math.log(4);
    const swapped = wrongWayRound(entered, -Math.log(4.1), 0.05);
    expect(swapped.swapped).toBe(true);
    expect(swapped.probability).toBeGreaterThan(0.95);
    expect(swapped.sentence).toContain('Reads like 1:4 where 4:1 was entered');
    expect(wrongWayRound(entered, Math.log(3.9), 0.05).swapped).toBe(false);
    expect(wrongWayRound(entered, -Math.log(2), 0.05).swapped).toBe(false);
    expect(wrongWayRound(0, 0, 0.05).swapped).toBe(false);
  });
});

describe('the next step', () => {
  const rung = (id: string, more: number, weighed = true, madeFrom: string[] = []): RungProgress => ({
    id,
    name: id,
    weighed,
    madeFrom,
    reads: [{ over: 'opaque', kept: 3 - more, verdict: { more, sentence: `read ${more} more` } }],
  });
  const state = (change: Partial<LadderProgress>): LadderProgress => ({
    rungs: [rung('masstone', 0), rung('1:1', 2)],
    byHead: true,
    connected: true,
    headReady: true,
    fitted: false,
    ...change,
  });

  it('weighs first, and a pile before what is let down from it', () => {
    const rungs = [rung('1:16', 3, false, ['1:4']), rung('1:4', 3, false)];
    expect(nextStep(state({ rungs }))).toMatchObject({ action: 'weigh', rungId: '1:4' });
  });

  it('then reads the rung that asks for more, once the head is there and set', () => {
    expect(nextStep(state({ connected: false })).action).toBe('connect');
    expect(nextStep(state({ headReady: 'Read the black trap.' }))).toMatchObject({
      action: 'calibrate',
      sentence: 'Read the black trap.',
    });
    expect(nextStep(state({ whiteDue: '10 readings since the white.' })).headline).toBe(
      'Read the white tile',
    );
    expect(nextStep(state({}))).toMatchObject({
      action: 'read',
      rungId: '1:1',
      left: 2,
      headline: 'Read the 1:1',
    });
    expect(nextStep(state({ byHead: false, connected: false })).action).toBe('read');
  });

  it('reads bare cards before the films over them', () => {
    expect(nextStep(state({ cards: { black: 0, white: 1 } }))).toMatchObject({
      action: 'card',
      over: 'white',
      left: 1,
    });
  });

  it('closes the last block with a white, fits, follows the advice, and is done', () => {
    const rungs = [rung('masstone', 0)];
    expect(nextStep(state({ rungs, whiteDue: 'Old white.' })).action).toBe('calibrate');
    expect(nextStep(state({ rungs })).action).toBe('fit');
    expect(nextStep(state({ rungs, fitted: true, advice: 'Read it once more.' })).action).toBe(
      'measure more',
    );
    expect(nextStep(state({ rungs, fitted: true }))).toMatchObject({ action: 'done' });
    expect(ladderDone([rung('a', 1), rung('b', 0)])).toEqual({ done: 5, of: 6 });
  });

  it('comes to an end: doing what it says, whatever the state, always leads to done', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 4 }), fc.boolean()), { minLength: 1, maxLength: 6 }),
        fc.boolean(),
        (shape, connected) => {
          let now = state({
            connected,
            headReady: connected || 'Read the white.',
            rungs: shape.map(([more, weighed], i) => rung(`r${i}`, more, weighed, i ? [`r${i - 1}`] : [])),
          });
          for (let i = 0; i < 100; i++) {
            const step = nextStep(now);
            if (step.action === 'done') return;
            const change = (f: (r: RungProgress) => RungProgress) =>
              now.rungs.map((r) => (r.id === step.rungId ? f(r) : r));
            if (step.action === 'weigh') now = { ...now, rungs: change((r) => ({ ...r, weighed: true })) };
            else if (step.action === 'connect') now = { ...now, connected: true };
            else if (step.action === 'calibrate') now = { ...now, headReady: true };
            else if (step.action === 'fit') now = { ...now, fitted: true };
            else now = { ...now, rungs: change((r) => rung(r.id, r.reads[0]!.verdict.more - 1)) };
          }
          throw new Error('It never came to an end.');
        },
      ),
    );
  });
});
