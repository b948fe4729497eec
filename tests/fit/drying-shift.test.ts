import { describe, expect, it } from 'vitest';
import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { dryingShift } from '../../src/fit/drying-shift.ts';
import { inventedSet, randomFrom } from './invented-set.ts';

const aged = (set: SwatchSet, ageDays: number): SwatchSet => ({
  ...set,
  swatches: set.swatches.map((s) => ({ ...s, ageDays })),
});

/** The same films read afresh, each reading moved by `shift` of it. */
const readAgain = (set: SwatchSet, seed: number, shift: (v: number) => number): SwatchSet => {
  const { normal } = randomFrom(seed);
  return {
    ...set,
    swatches: set.swatches.map((s) => {
      const n = s.readings.length;
      const mean = s.readings[0]!.map((_, c) => s.readings.reduce((a, r) => a + r[c]! / n, 0));
      return { ...s, readings: s.readings.map(() => mean.map((v) => shift(v) + 0.002 * normal())) };
    }),
  };
};

describe('drying shift', () => {
  const wet = aged(inventedSet(3, { tubes: 2 }), 0);

  it('refuses readings of two instruments, and documents that share no swatch', () => {
    expect(() => dryingShift(wet, inventedSet(3, { tubes: 2, kind: 'bands' }))).toThrow(
      /different instruments/,
    );
    const renamed = { ...wet, swatches: wet.swatches.map((s) => ({ ...s, id: `${s.id} dry` })) };
    expect(() => dryingShift(wet, renamed)).toThrow(/same id/);
  });

  it('tells films that went lighter and greyer, with the days', () => {
    // A sunk surface: a hundredth of haze over everything.
    const shifts = dryingShift(
      wet,
      aged(
        readAgain(wet, 5, (v) => v + 0.01),
        28,
      ),
    );
    expect(shifts).toHaveLength(9);
    const dark = shifts.find((s) => s.id === 'paint-1-masstone')!;
    expect(dark.beyondNoise).toBe(true);
    expect(dark.words).toMatch(/dried lighter.* from day 0 to day 28/);
    expect(dark.low).toBeGreaterThan(0);
  });

  it('is not claimed of films that did not change, 95 times in 100', () => {
    let claimed = 0;
    let all = 0;
    for (let seed = 1; seed <= 20; seed++) {
      // The first reading is noisy too: its mean stands off the truth by as much as the noise says.
      const truth = readAgain(wet, 900 + seed, (v) => v);
      const shifts = dryingShift(
        truth,
        readAgain(wet, 500 + seed, (v) => v),
      );
      claimed += shifts.filter((s) => s.beyondNoise).length;
      all += shifts.length;
    }
    // 180 films at 5 %: standard deviation 1.6 %.
    expect(claimed / all).toBeLessThan(0.1);
  });
});
