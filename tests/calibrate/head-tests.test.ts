import { describe, expect, it } from 'vitest';
import { apertureLinearity } from '../../src/calibrate/linearity/aperture.ts';
import { atFirstGain, gainRatio } from '../../src/calibrate/linearity/gain-ratio.ts';
import { liftTest } from '../../src/calibrate/linearity/lift.ts';
import { superposition } from '../../src/calibrate/linearity/superposition.ts';
import { relativeErrorOfKS } from '../../src/calibrate/noise/reading-worth.ts';
import { estimateNoise } from '../../src/calibrate/noise/instrument-noise.ts';
import { judgeCheckTile } from '../../src/calibrate/tile/check-tile.ts';
import { controlLimits, judgeValue, movingRanges } from '../../src/calibrate/tile/control-chart.ts';
import { studentQuantile } from '../../src/calibrate/tile/student-quantile.ts';
import { normalQuantile } from '../../src/calibrate/tile/normal-quantile.ts';
import { ownTileReference } from '../../src/calibrate/tile/own-tile.ts';
import { NORMAL_QUANTILE, PRINTED_3_DECIMALS, PRINTED_4_DECIMALS } from '../tolerances.ts';
import { seededNormal } from './seeded-normal.ts';

const channels = ['F1', 'F2', 'F3'];

describe('linearity', () => {
  it('by superposition: a linear head passes whatever the lamps', () => {
    expect(superposition([1, 2, 3], [4, 5, 6], [5, 7, 9], channels)).toMatchObject({
      passed: true,
      worst: 0,
    });
  });

  it('by superposition: a head that compresses by 1 % at the top is found out', () => {
    const compress = (x: number): number => x * (1 - 0.001 * x);
    const lamp = (x: number) => [x, x, x].map(compress);
    const test = superposition(lamp(5), lamp(5), lamp(10), channels);
    // 2 x 5(1 - .005) against 10(1 - .01): 9.95 / 9.9 - 1.
    expect(test.passed).toBe(false);
    expect(test.worst).toBeCloseTo(9.95 / 9.9 - 1, 12);
    expect(test.sentence).toContain('0.51 %');
    expect(() => superposition([1], [1], [1], channels)).toThrow('different channels');
  });

  it('by superposition: a reading that is no number does not pass', () => {
    expect(superposition([1, Number.NaN, 1], [1, 1, 1], [2, 2, 2], channels).passed).toBe(false);
  });

  it('by aperture: within 0.5 % of the longest, in any order', () => {
    const at = (apertureS: number, off: number) => ({ apertureS, signal: [1, 2, 3 * (1 + off)] });
    expect(apertureLinearity([at(0.05, 0.004), at(0.2, 0), at(0.1, 0.002)], channels).passed).toBe(true);
    const bad = apertureLinearity([at(0.2, 0), at(0.1, -0.006)], channels);
    expect([bad.passed, bad.channel]).toEqual([false, 'F3']);
    expect(() => apertureLinearity([at(0.2, 0), at(0.2, 0)], channels)).toThrow('two apertures');
  });

  it('gain ratios are kept per channel and undo themselves', () => {
    const ratio = gainRatio(
      { gain: 64, signal: [1, 2, 3] },
      { gain: 128, signal: [1.05, 2.02, 3] },
      channels,
    );
    expect(ratio.passed).toBe(true);
    expect(Array.from(atFirstGain(Float64Array.of(1.05, 2.02, 3), ratio))).toEqual([1, 2, 3]);
    expect(
      gainRatio({ gain: 64, signal: [1, 1, 1] }, { gain: 128, signal: [1, 1, 2] }, channels).passed,
    ).toBe(false);
  });

  it('lift: the slope per 0.1 mm against 0.5 %', () => {
    const at = (shimMm: number, perTenth: number) => ({
      shimMm,
      signal: [1, 1, 1 - (perTenth * shimMm) / 0.1],
    });
    const series = (k: number) => [at(0, k), at(0.1, k), at(0.2, k)];
    expect(liftTest(series(0.004), channels).passed).toBe(true);
    const bad = liftTest(series(0.006), channels);
    expect([bad.passed, bad.channel]).toEqual([false, 'F3']);
    expect(() => liftTest([at(0, 0), at(0, 0)], channels)).toThrow('two heights');
  });
});

describe('the control chart', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2, flow rates of ten batches (numbers from memory):
  // mean 50.81, mean moving range 1.8778, limits 45.8159 and 55.8041 with 3/1.128.
  const flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

  it('draws the handbook example', () => {
    const limits = controlLimits(flow, 3 / 1.128);
    expect(limits.mean).toBeCloseTo(50.81, 10);
    expect(Math.abs(limits.meanRange - 1.8778)).toBeLessThan(PRINTED_4_DECIMALS);
    expect(Math.abs(limits.upper - 55.8041)).toBeLessThan(2 * PRINTED_4_DECIMALS);
    expect(Math.abs(limits.lower - 45.8159)).toBeLessThan(2 * PRINTED_4_DECIMALS);
    expect(limits.firm).toBe(false);
  });

  it('needs five points, and tells above, below, jump and inside apart', () => {
    expect(() => controlLimits([1, 2, 3, 4])).toThrow('need 5 sessions');
    expect(movingRanges([1, 4, 2])).toEqual([3, 2]);
    const limits = controlLimits(flow);
    expect(judgeValue(51, 51, limits)).toBe('inside');
    expect(judgeValue(56, 54, limits)).toBe('above');
    expect(judgeValue(45, 46, limits)).toBe('below');
    expect(judgeValue(54, 46.5, limits)).toBe('jump');
  });

  it('has the quantiles of the tables: 1.6449, 1.9600, 3.0000 for 0.95, 0.975, 0.99865', () => {
    for (const [p, z] of [
      [0.95, 1.6449],
      [0.975, 1.96],
      [0.99865, 3],
    ] as const) {
      expect(Math.abs(normalQuantile(p) - z)).toBeLessThan(NORMAL_QUANTILE);
      expect(Math.abs(normalQuantile(1 - p) + z)).toBeLessThan(NORMAL_QUANTILE);
    }
  });

  it("has Student's quantiles of the tables: 2.571, 5.841, 4.587, 31.599", () => {
    for (const [above, nu, t] of [
      [0.025, 5, 2.571],
      [0.005, 3, 5.841],
      [0.0005, 10, 4.587],
      [0.0005, 2, 31.599],
    ] as const) {
      expect(Math.abs(studentQuantile(above, nu) - t)).toBeLessThan(PRINTED_3_DECIMALS);
    }
    // JCGM 100:2008 table G.2, 99.73 %, two decimals (from memory).
    const table = [3, 4, 5, 10].map((nu) => studentQuantile(0.00135, nu).toFixed(2));
    expect(table).toEqual(['9.22', '6.62', '5.51', '3.96']);
  });

  it('behind few sessions a steady tile seldom alarms, and a smear that can be seen is told', () => {
    const names = Array.from({ length: 36 }, (_, i) => `${380 + 10 * i} nm`);
    let alarms = 0;
    const trials = 100;
    for (let seed = 1; seed <= trials; seed++) {
      const normal = seededNormal(seed);
      // Placing moves all bands together, counts each by itself.
      const session = (lost = 0): number[] => {
        const placed = 1 - lost + 0.0015 * normal();
        return names.map((_, c) => (0.3 + 0.005 * c) * placed + 0.0006 * normal());
      };
      const past = Array.from({ length: 5 + (seed % 10) }, () => session());
      if (!judgeCheckTile([...past, session()], names).steady) alarms++;
      expect(judgeCheckTile([...past, session(0.05)], names).steady).toBe(false);
    }
    console.log(
      `A steady made tile alarmed in ${alarms} of ${trials} sessions, 5 to 14 sessions behind each.`,
    );
    expect(alarms / trials).toBeLessThanOrEqual(0.03);
  });

  it('charts the level as the mean over channels, and sees all of them fall together', () => {
    const normal = seededNormal(3);
    const session = (fallen = 0) => channels.map((_, c) => 0.3 + 0.1 * c - fallen + 0.001 * normal());
    const past = Array.from({ length: 20 }, () => session());
    const verdict = judgeCheckTile([...past, session(0.006)], channels);
    const level = verdict.charts[0]!;
    expect(level.name).toBe('level');
    expect(level.values[0]).toBeCloseTo(past[0]!.reduce((a, b) => a + b, 0) / 3, 12);
    expect(level.signal).toBe('below');
    expect(verdict.sentence).toMatch(/outside its limits in level, .* by 1\.[345] %/);
  });

  it('a tile that never changed at all is steady', () => {
    expect(
      judgeCheckTile(
        Array.from({ length: 8 }, () => [0.1, 0.4, 0.7]),
        channels,
      ).steady,
    ).toBe(true);
  });

  it('watches a tile: steady sessions seldom alarm, a smear in one band always does', () => {
    const names = Array.from({ length: 36 }, (_, i) => `${380 + 10 * i} nm`);
    let alarms = 0;
    const trials = 60;
    for (let seed = 1; seed <= trials; seed++) {
      const normal = seededNormal(seed);
      const session = () => names.map((_, c) => 0.3 + 0.005 * c + 0.001 * normal());
      const past = Array.from({ length: 30 }, session);
      if (!judgeCheckTile([...past, session()], names).steady) alarms++;
      const smeared = session();
      smeared[7]! -= 0.012;
      const verdict = judgeCheckTile([...past, smeared], names);
      expect(verdict.steady).toBe(false);
      expect(verdict.sentence).toContain('450 nm');
    }
    // Level, balance and 36 channels at 0.27 % each group, and jumps, all with limits that are themselves estimated.
    expect(alarms / trials).toBeLessThan(0.12);
  });
});

describe("a tile's own values", () => {
  it('are the mean of the placings, with their scatter and the known tile in squares', () => {
    const own = ownTileReference([[0.8], [0.82], [0.84]], { reflectance: [0.98], sigma: [0.0098] });
    expect(own.reflectance[0]).toBeCloseTo(0.82, 12);
    expect(own.sigma[0]).toBeCloseTo(Math.hypot(0.02 / Math.sqrt(3), 0.0082), 12);
    expect(() => ownTileReference([[0.8], [0.8]], { reflectance: [1] })).toThrow('three placings');
    expect(() => ownTileReference([[0.8], [0.8], [1, 2]], { reflectance: [1] })).toThrow('another number');
  });
});

describe('instrument noise from repeats', () => {
  it('needs a repeat', () => {
    expect(() => estimateNoise([[[0.5]]])).toThrow('twice or more');
  });

  it('finds the absolute and the relative part it was made with', () => {
    const normal = seededNormal(20_240);
    const groups = [0.003, 0.02, 0.1, 0.3, 0.6, 0.9].map((level) =>
      Array.from({ length: 60 }, () =>
        Array.from({ length: 12 }, () => level + Math.hypot(0.001, 0.005 * level) * normal()),
      ),
    );
    const noise = estimateNoise(groups);
    // 708 degrees of freedom a group: each standard deviation is known to about 1/sqrt(2 x 708) = 2.7 %.
    expect(noise.sigma / 0.001).toBeGreaterThan(0.92);
    expect(noise.sigma / 0.001).toBeLessThan(1.08);
    expect(noise.relative / 0.005).toBeGreaterThan(0.92);
    expect(noise.relative / 0.005).toBeLessThan(1.08);
    expect(noise.degreesOfFreedom).toBe(6 * 59 * 12);
  });

  it('puts all into the absolute part when only one level was read, and none below the floor', () => {
    const noise = estimateNoise([[[0.5], [0.502]]]);
    expect(noise.sigma).toBeCloseTo(Math.SQRT2 * 0.001, 9);
    expect(noise.relative).toBe(0);
    expect(estimateNoise([[[0.5], [0.5]]]).sigma).toBeGreaterThan(0);
  });
});

describe('what a reading is worth', () => {
  it('has the worked figures: an error of .001 in R is 10.2 % of K/S at R .01, 0.62 % at .30, 2.1 % at .90', () => {
    const table = [
      [0.01, '10.2'],
      [0.02, '5.2'],
      [0.05, '2.2'],
      [0.1, '1.2'],
      [0.3, '0.62'],
      [0.6, '0.67'],
      [0.9, '2.1'],
    ] as const;
    for (const [R, perCent] of table) {
      const digits = perCent.split('.')[1]!.length;
      expect((100 * relativeErrorOfKS(R, 0.001)).toFixed(digits)).toBe(perCent);
    }
  });

  it('is what moving R does, and nothing at black or at a perfect white', () => {
    const q = (R: number): number => (1 - R) ** 2 / (2 * R);
    expect(relativeErrorOfKS(0.2, 1e-6)).toBeCloseTo((q(0.2 - 1e-6) - q(0.2 + 1e-6)) / 2 / q(0.2), 10);
    expect(relativeErrorOfKS(0, 0.001)).toBe(Number.POSITIVE_INFINITY);
    expect(relativeErrorOfKS(1, 0.001)).toBe(Number.POSITIVE_INFINITY);
  });
});
