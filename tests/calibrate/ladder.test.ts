/** The weighing plan of a ladder, the names of its rungs, and masses that were taken the wrong way round. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { planLadder } from '../../src/calibrate/ladder/plan.ts';
import type { PlanRequest } from '../../src/calibrate/ladder/plan-shapes.ts';
import { ladderRatios, lnRatiosOf, straightRatioSigma } from '../../src/calibrate/ladder/ratios.ts';
import { parseRungName, rungName } from '../../src/calibrate/ladder/rung-name.ts';
import { massesAgainstName, wrongWayRound } from '../../src/calibrate/ladder/wrong-way-round.ts';

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
