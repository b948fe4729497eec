import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MixProblem, highlights, paletteLimits, predictMix, valueString } from '../../src/mix/index.ts';
import { inventedPalette } from './invented-palette.ts';

const palette = inventedPalette();
const three = inventedPalette(['white', 'red-earth', 'deep-blue']);

describe('what is refused, in one sentence', () => {
  it.each([
    [{ steps: 1 }, /string of 1 steps cannot be laid out; give 2 to 60/],
    [{ from: { value: 11 } }, /Value 11 is not on the scale/],
    [{ kind: { tube: 'white' } }, /is the white itself/],
    [{ kind: { tube: 'nobody' } }, /no tube "nobody"/],
    [{ kind: { lean: Number.NaN } }, /lean of NaN is not a number/],
    [{ grams: 0 }, /weigh 0 g/],
  ])('%o', (options, sentence) => {
    expect(() => valueString(palette, options)).toThrow(MixProblem);
    expect(() => valueString(palette, options)).toThrow(sentence);
  });

  it('a highlight that is not warm, or that no tube can give', () => {
    expect(() => highlights(palette, { warmth: -2 })).toThrow(/-2 is not warm/);
    expect(() => highlights(inventedPalette(['white', 'deep-blue']))).toThrow(
      /No tube of the palette warms the white/,
    );
  });
});

describe('equal steps of Munsell value', () => {
  it('between any two ends the value of every step is exact', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 12 }),
        fc.double({ min: 2.2, max: 5, noNaN: true }),
        fc.double({ min: 5.5, max: 9, noNaN: true }),
        (steps, from, to) => {
          const string = valueString(three, { steps, from: { value: from }, to: { value: to } });
          string.steps.forEach((s, i) => {
            expect(s.value).toBeCloseTo(from + ((to - from) * i) / (steps - 1), 10);
            expect(Math.abs(s.prediction!.value - s.value)).toBeLessThan(0.01);
            expect(s.prediction!.interval.value[0]).toBeLessThan(s.prediction!.value);
          });
        },
      ),
      { numRuns: 8 },
    );
  });

  it('runs from light to dark too, and takes its ends from mixes or as far as the tubes go', () => {
    const down = valueString(three, {
      steps: 4,
      from: { masses: { white: 1 } },
      to: { masses: { white: 1, 'deep-blue': 1 } },
    });
    expect(down.steps[0]!.value).toBeCloseTo(predictMix(three, { white: 1 }).value, 10);
    expect(down.steps[3]!.value).toBeLessThan(down.steps[0]!.value);
    const whole = valueString(three, { steps: 5 });
    const { darkest, lightest } = paletteLimits(three);
    expect(whole.steps[0]!.value).toBeCloseTo(darkest.value, 3);
    expect(whole.steps[4]!.value).toBeCloseTo(lightest.value, 3);
  });

  it('a value no mix has is left empty and said', () => {
    const { steps, warnings } = valueString(three, { steps: 3, from: { value: 0.2 }, to: { value: 6 } });
    expect(steps[0]!.masses).toBeUndefined();
    expect(warnings[0]).toMatch(/No mix of these tubes has value 0.20; they go from \d\.\d\d to \d\.\d\d\./);
    expect(steps[0]!.ofFamily).toBe(true);
  });
});

describe('what runs along it', () => {
  it('neutrals, from one family of tubes throughout', () => {
    const { steps } = valueString(palette, { steps: 7, from: { value: 2 }, to: { value: 8 } });
    for (const s of steps) {
      expect(s.ofFamily).toBe(true);
      expect(s.prediction!.chroma).toBeLessThan(1);
    }
    const families = new Set(steps.flatMap((s) => Object.keys(s.masses!)));
    expect(families.size).toBeLessThanOrEqual(4);
  });

  it('an end that one tube alone reaches does not take the others from the rest of the string', () => {
    for (const some of [
      inventedPalette(['white', 'red-earth', 'green-blue']),
      inventedPalette(['white', 'yellow-earth', 'deep-blue']),
    ]) {
      const whole = valueString(some, { steps: 7 }).steps;
      const inner = valueString(some, {
        steps: 5,
        from: { value: whole[1]!.value },
        to: { value: whole[5]!.value },
      }).steps;
      inner.forEach((s, i) => {
        const { chroma, value } = whole[i + 1]!.prediction!;
        expect(Math.abs(value - s.value)).toBeLessThan(0.01);
        expect(chroma).toBeLessThan(s.prediction!.chroma + 1.5);
      });
    }
  });

  it.each([6, -6])('a fixed lean of %d', (lean) => {
    const { steps } = valueString(palette, {
      steps: 6,
      from: { value: 3 },
      to: { value: 8 },
      kind: { lean },
    });
    for (const s of steps) expect(s.prediction!.lean).toBeCloseTo(lean, 0);
  });

  it('says where the lean cannot be had', () => {
    const { warnings } = valueString(three, {
      steps: 5,
      from: { value: 3 },
      to: { value: 9 },
      kind: { lean: 60 },
    });
    expect(warnings.join(' ')).toMatch(/the nearest is too cool by/);
  });

  it('one tube let down with white, whose value falls as its share grows', () => {
    const { steps } = valueString(palette, { kind: { tube: 'deep-blue' }, steps: 6 });
    for (const s of steps) {
      expect(Object.keys(s.masses!).every((id) => id === 'white' || id === 'deep-blue')).toBe(true);
      expect(Math.abs(s.prediction!.value - s.value)).toBeLessThan(1e-4);
    }
    const shares = steps.map((s) => s.masses!['deep-blue'] ?? 0);
    for (let i = 1; i < shares.length; i++) expect(shares[i]).toBeLessThan(shares[i - 1]!);
  });
});

describe('highlights: near-white touched with a warm', () => {
  it('lean as much warmer as asked, least value lost first, never with a cool tube', () => {
    const found = highlights(palette, { warmth: 3 });
    const plain = predictMix(palette, { white: 1 });
    for (const h of found) expect(h.prediction.lean - plain.lean).toBeCloseTo(3, 6);
    for (let i = 1; i < found.length; i++)
      expect(found[i]!.valueLost).toBeGreaterThanOrEqual(found[i - 1]!.valueLost);
    expect(found.map((h) => h.warm)).not.toContain('deep-blue');
    expect(found[0]!.prediction.value).toBeGreaterThan(plain.value - 0.2);
  });
});
