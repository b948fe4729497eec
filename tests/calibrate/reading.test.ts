import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { closeBlock } from '../../src/calibrate/reading/block.ts';
import { basicCounts, signalOf } from '../../src/calibrate/reading/counts.ts';
import { holdLampSteady } from '../../src/calibrate/reading/lamp-drift.ts';
import { holdLightTight } from '../../src/calibrate/reading/light-leak.ts';
import {
  holdWhite,
  reflectanceFromCounts,
  reflectanceFromSignal,
} from '../../src/calibrate/reading/reflectance.ts';
import { lineRise, warmUp } from '../../src/calibrate/reading/warm-up.ts';
import { whiteLevel } from '../../src/calibrate/reading/white-level.ts';
import { closeBracket, whiteAt, whiteDue } from '../../src/calibrate/reading/white-bracket.ts';
import { ReadingRefused } from '../../src/calibrate/refusal.ts';
import { SAME_ARITHMETIC } from '../tolerances.ts';

const head = { channels: ['F1', 'F2', 'F3'], fullScale: 65_500 };
const frame = (counts: number[], lamp = true) => ({ counts, gain: 64, apertureS: 0.182, lamp });
const exposure = (light: number[], dark: number[]) => ({ light: frame(light), dark: frame(dark, false) });
const refusal = (act: () => unknown): ReadingRefused => {
  try {
    act();
  } catch (error) {
    if (error instanceof ReadingRefused) return error;
    throw error;
  }
  throw new Error('It was taken; a refusal was expected.');
};
/** One sentence: capital or a name first, one full stop, at the end. */
const oneSentence = /^[A-Z0-9][^\n]*[^.]\.$/;

describe('counts', () => {
  it('become basic counts: raw over gain times milliseconds', () => {
    // 3203 counts at 64x and 50.04 ms are a light of 1 count per ms at 1x (values of a simulated head).
    const [basic] = basicCounts({ counts: [3202.6], gain: 64, apertureS: 0.05004, lamp: true });
    expect(basic).toBeCloseTo(1, 4);
  });

  it('are refused when a channel is full, naming the band', () => {
    const no = refusal(() => signalOf(exposure([100, 65_500, 65_501], [1, 1, 1]), head));
    expect(no.reason).toBe('saturated');
    expect(no.channels).toEqual(['F2', 'F3']);
    expect(no.message).toMatch(/F2, F3 are full .*lower gain/);
    expect(no.message).toMatch(oneSentence);
  });

  it('are refused when a dark is full, a count is missing or is no number', () => {
    expect(refusal(() => signalOf(exposure([1, 1, 1], [1, 65_500, 1]), head)).reason).toBe('saturated');
    expect(refusal(() => signalOf(exposure([1, 1], [1, 1]), head)).reason).toBe('channels-differ');
    const no = refusal(() => signalOf(exposure([1, Number.NaN, 1], [1, 1, 1]), head));
    expect([no.reason, no.channels]).toEqual(['not-a-number', ['F2']]);
  });

  it('are refused when light and dark have other settings, or the lamp was not as it should be', () => {
    const dark = { ...frame([1, 1, 1], false), gain: 32 };
    const no = refusal(() => signalOf({ light: frame([5, 5, 5]), dark }, head));
    expect(no.reason).toBe('settings-differ');
    expect(no.message).toContain('gain 32');
    const lit = { light: frame([5, 5, 5]), dark: frame([1, 1, 1], true) };
    expect(refusal(() => signalOf(lit, head)).message).toContain('on for the dark');
    const unlit = { light: frame([5, 5, 5], false), dark: frame([1, 1, 1], false) };
    expect(refusal(() => signalOf(unlit, head)).message).toContain('off for the reading');
  });
});

describe('reflectance from counts', () => {
  const white = Float64Array.of(10, 20, 30);
  const trap = Float64Array.of(0.1, 0.2, 0.3);
  const tile = [0.98, 0.97, 0.99];

  it('is the tile on the tile, the trap on the trap, and half way between them half way between', () => {
    const scale = { white, trap, tile, trapReflectance: 0.004 };
    expect(Array.from(reflectanceFromSignal(white, scale, head.channels))).toEqual(tile);
    expect(Array.from(reflectanceFromSignal(trap, scale, head.channels))).toEqual([0.004, 0.004, 0.004]);
    const half = white.map((w, i) => (w + trap[i]!) / 2);
    reflectanceFromSignal(half, scale, head.channels).forEach((R, i) => {
      expect(Math.abs(R - (tile[i]! + 0.004) / 2)).toBeLessThan(SAME_ARITHMETIC);
    });
  });

  it('is not clipped: darker than the trap is below zero', () => {
    const R = reflectanceFromSignal(Float64Array.of(0, 0, 0), { white, trap, tile }, head.channels);
    expect(R.every((r) => r < 0)).toBe(true);
  });

  it('is recovered whatever flare, lamp and channel gains the head has', () => {
    const share = fc.double({ min: 0.01, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        share,
        share,
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        share,
        (R, lamp, flare, gain) => {
          const sees = (r: number) => Float64Array.of(...[1, 2, 3].map((c) => lamp * gain * c * (r + flare)));
          const scale = { white: sees(0.9), trap: sees(0), tile: [0.9, 0.9, 0.9] };
          for (const r of reflectanceFromSignal(sees(R), scale, head.channels)) {
            expect(Math.abs(r - R)).toBeLessThan(SAME_ARITHMETIC);
          }
        },
      ),
    );
  });

  it('goes all the way from raw counts', () => {
    const shot = exposure([5100, 10_100, 15_100], [100, 100, 100]);
    const whiteSignal = signalOf(exposure([10_100, 20_100, 30_100], [100, 100, 100]), head);
    const R = reflectanceFromCounts(shot, { white: whiteSignal, trap: new Float64Array(3), tile }, head);
    R.forEach((r, i) => expect(Math.abs(r - tile[i]! / 2)).toBeLessThan(SAME_ARITHMETIC));
  });

  it('is refused where the white is no brighter than the trap, or lists differ in length', () => {
    const dim = Float64Array.of(10, 0.2, 30);
    const no = refusal(() => reflectanceFromSignal(white, { white: dim, trap, tile }, head.channels));
    expect([no.reason, no.channels]).toEqual(['low-signal', ['F2']]);
    expect(no.message).toMatch(oneSentence);
    const short = { white, trap, tile: [1] };
    expect(refusal(() => reflectanceFromSignal(white, short, head.channels)).reason).toBe('channels-differ');
  });

  it('is refused where no paint reads like that: the scale is wrong, not the paint', () => {
    const scale = { white, trap, tile };
    const bright = refusal(() => reflectanceFromSignal(Float64Array.of(10, 30, 30), scale, head.channels));
    expect([bright.reason, bright.channels]).toEqual(['implausible', ['F2']]);
    expect(bright.message).toMatch(/^F2 reads 1\.460, brighter than any white/);
    const dark = refusal(() => reflectanceFromSignal(Float64Array.of(-0.2, 1, 1), scale, head.channels));
    expect(dark.message).toContain('darker than the black trap');
    const none = Float64Array.of(Number.NaN, 1, 1);
    expect(refusal(() => reflectanceFromSignal(none, scale, head.channels)).reason).toBe('implausible');
  });

  it('is refused when white and reading were taken with other settings', () => {
    const scale = { white, trap, tile, settings: { gain: 128, apertureS: 0.182 } };
    const no = refusal(() => reflectanceFromCounts(exposure([5, 5, 5], [1, 1, 1]), scale, head));
    expect(no.reason).toBe('settings-differ');
    expect(no.message).toContain('The white was taken at gain 128');
  });

  it('takes a white only when every channel has 1 % of full scale', () => {
    expect(holdWhite(exposure([40_000, 40_000, 800], [10, 10, 10]), head)).toHaveLength(3);
    const no = refusal(() => holdWhite(exposure([40_000, 40_000, 300], [10, 10, 10]), head));
    expect([no.reason, no.channels]).toEqual(['low-signal', ['F3']]);
  });
});

describe('the level of the white', () => {
  const gains = [16, 32, 64, 128, 256];
  it('is good in the middle, and elsewhere names the gain that mends it, or the aperture where none does', () => {
    expect(whiteLevel(frame([20_000, 45_000, 30_000]), head, gains)).toMatchObject({
      state: 'good',
      gain: undefined,
    });
    const low = whiteLevel(frame([5000, 12_000, 8000]), head, gains);
    expect(low).toMatchObject({ state: 'low', channel: 'F2', gain: 256 });
    expect(low.sentence).toContain('fills 18 % of the scale in F2');
    expect(whiteLevel(frame([20_000, 62_000, 30_000]), head, gains)).toMatchObject({
      state: 'high',
      gain: 32,
    });
    expect(whiteLevel(frame([20_000, 62_000, 30_000]), head, [64]).sentence).toContain(
      'shorten the aperture',
    );
  });
});

describe('the white bracket', () => {
  const before = { signal: Float64Array.of(10, 20, 30), atMs: 0 };
  const after = { signal: Float64Array.of(10.04, 20.08, 30.12), atMs: 600_000 };

  it('is interpolated in time, held outside, and the last white while the block is open', () => {
    expect(whiteAt(before, after, 150_000)[0]).toBeCloseTo(10.01, 12);
    expect(whiteAt(before, after, -5)[0]).toBe(10);
    expect(whiteAt(before, after, 9e9)[0]).toBeCloseTo(10.04, 12);
    expect(whiteAt(before, undefined, 300_000)).toBe(before.signal);
  });

  it('closes when the whites differ by 0.4 %, and is refused at 0.6 % with the band and the direction', () => {
    expect(() => closeBracket(before, after, head.channels)).not.toThrow();
    const smeared = { signal: Float64Array.of(10, 20, 29.82), atMs: 600_000 };
    const no = refusal(() => closeBracket(before, smeared, head.channels));
    expect([no.reason, no.channels]).toEqual(['white-drift', ['F3']]);
    expect(no.message).toContain('fell by 0.60 % in F3');
    expect(no.message).toMatch(oneSentence);
  });

  it('is refused when the clock runs backwards or a white is no number', () => {
    expect(refusal(() => closeBracket(after, before, head.channels)).reason).toBe('white-order');
    const broken = { signal: Float64Array.of(10, Number.NaN, 30), atMs: 1 };
    expect(refusal(() => closeBracket(before, broken, head.channels)).reason).toBe('white-drift');
  });

  it('works a block out again: a lamp that fades evenly leaves no trace in it', () => {
    const fading = (R: number, atMs: number) => ({
      signal: Float64Array.of(10, 20, 30).map((v) => v * R * (1 - 4e-9 * atMs)),
      atMs,
    });
    const readings = [100_000, 500_000, 900_000].map((atMs) => fading(0.4, atMs));
    const scale = { trap: new Float64Array(3), tile: [1, 1, 1] };
    const [first, last] = [fading(1, 0), fading(1, 1_000_000)];
    for (const R of closeBlock(first, readings, last, scale, head.channels)) {
      R.forEach((r) => expect(Math.abs(r - 0.4)).toBeLessThan(SAME_ARITHMETIC));
    }
    const gone = fading(1, 2_000_000);
    expect(refusal(() => closeBlock(first, readings, gone, scale, head.channels)).reason).toBe('white-drift');
  });

  it('is due after ten readings, ten minutes or two kelvin', () => {
    const fresh = { readingsSinceWhite: 9, whiteAgeMs: 599_000, kelvinChange: 1.9 };
    expect(whiteDue(fresh)).toBeUndefined();
    expect(whiteDue({ ...fresh, readingsSinceWhite: 10 })).toContain('10 readings');
    expect(whiteDue({ ...fresh, whiteAgeMs: 600_000 })).toContain('10 minutes');
    expect(whiteDue({ ...fresh, kelvinChange: -2 })).toContain('2.0 K colder');
  });
});

describe('light leak and lamp', () => {
  const white = Float64Array.of(2, 2, 2);
  // Basic counts of 1 are 64 x 182 = 11 648 raw counts here.
  const dark = (basic: number) => frame([basic * 11_648, 0, 0], false);

  it('leaks below 0.2 % of the white pass, above it they are refused', () => {
    expect(() => holdLightTight(dark(0.0139), dark(0.01), white, head.channels)).not.toThrow();
    const no = refusal(() => holdLightTight(dark(0.0161), dark(0.01), white, head.channels));
    expect([no.reason, no.channels]).toEqual(['light-leak', ['F1']]);
    expect(no.message).toMatch(oneSentence);
  });

  it('a frame whose light changed while it was taken is refused, not kept with a warning', () => {
    expect(() => holdLampSteady({ lightChanged: false })).not.toThrow();
    const no = refusal(() => holdLampSteady({ lightChanged: true }));
    expect(no.reason).toBe('lamp-drift');
    expect(no.message).toMatch(oneSentence);
  });
});

describe('warm-up', () => {
  const whites = (n: number, slope: number, everyMs = 2300) =>
    Array.from({ length: n }, (_, i) => ({
      signal: Float64Array.of(10, 20, 30).map((v) => v * (1 + slope * i)),
      atMs: i * everyMs,
    }));

  it('knows nothing without whites, or with all of them at one moment', () => {
    expect(warmUp([]).state).toBe('unknown');
    expect(warmUp(whites(12, 0, 0)).state).toBe('settling');
  });

  it('is not settled by a quick series: the same slow drift shows only over 20 s', () => {
    // 0.4 % a minute: 0.02 % in ten readings at 0.4 s, more than 0.1 % over 20 s.
    expect(warmUp(whites(10, 0.000025, 400)).state).toBe('settling');
    const longer = warmUp(whites(60, 0.000025, 400));
    expect(longer.state).toBe('settling');
    expect(Math.abs(longer.drift!)).toBeGreaterThan(0.001);
    expect(warmUp(whites(60, 0, 400)).state).toBe('settled');
  });

  it('knows nothing from two whites, waits at nine steady ones, is settled at ten', () => {
    expect(warmUp(whites(2, 0)).state).toBe('unknown');
    expect(warmUp(whites(9, 0)).state).toBe('settling');
    expect(warmUp(whites(10, 0)).state).toBe('settled');
  });

  it('draws the line at 0.1 % over the ten', () => {
    expect(warmUp(whites(10, 0.0009 / 9)).state).toBe('settled');
    const drifting = warmUp(whites(10, 0.0012 / 9));
    expect(drifting.state).toBe('settling');
    expect(drifting.sentence).toContain('0.12 %');
    expect(warmUp(whites(10, -0.0012 / 9), true).state).toBe('drifting');
  });

  it('looks at the last ten over 20 s only', () => {
    const later = whites(10, 0).map((w) => ({ ...w, atMs: w.atMs + 100_000 }));
    expect(warmUp([...whites(30, 0.01), ...later]).state).toBe('settled');
  });

  it('measures the rise of a line exactly, at even times and others', () => {
    expect(lineRise([1, 3, 5], [0, 1, 2])).toBe(4);
    expect(lineRise([1, 3, 9], [0, 1, 4])).toBeCloseTo(8, 12);
    expect(lineRise([7], [0])).toBe(0);
    expect(lineRise([], [])).toBe(0);
  });
});
