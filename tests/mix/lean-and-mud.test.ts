import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../src/colour/ciede2000.ts';
import { MixProblem, NUDGES, betweenTwo, nudges, predictMix } from '../../src/mix/index.ts';
import { inventedPalette } from './invented-palette.ts';

const palette = inventedPalette();

describe('between two tubes', () => {
  it('the same tube twice, one nobody has, or too few points are refused in one sentence', () => {
    expect(() => betweenTwo(palette, 'black', 'black')).toThrow(MixProblem);
    expect(() => betweenTwo(palette, 'black', 'puce')).toThrow(/no tube "puce"/);
    expect(() => betweenTwo(palette, 'black', 'white', { points: 2 })).toThrow(/give 3 to 1000/);
  });

  it('begins and ends with the tubes themselves, each point the colour of its share', () => {
    const { points } = betweenTwo(palette, 'deep-blue', 'golden-yellow', { points: 11 });
    expect(points[0]!.share).toBe(1);
    expect(points.at(-1)!.share).toBe(0);
    for (const p of points) {
      const { lab } = predictMix(palette, { 'deep-blue': p.share, 'golden-yellow': 1 - p.share });
      expect(ciede2000(lab, p.lab)).toBeLessThan(1e-9);
    }
  });

  it('opposites kill each other, neighbours mix cleanly', () => {
    const mud = betweenTwo(palette, 'cool-green', 'warm-red');
    expect(mud.kept).toBeLessThan(0.3);
    expect(mud.sentence).toMatch(/kill each other/);
    expect(mud.dullest.chroma).toBe(Math.min(...mud.points.map((p) => p.chroma)));
    const clean = betweenTwo(palette, 'warm-red', 'golden-yellow');
    expect(clean.kept).toBeGreaterThan(0.8);
    expect(clean.sentence).toMatch(/mix cleanly/);
  });

  it('a black or a white greys a colour and muddies nothing', () => {
    expect(betweenTwo(palette, 'warm-red', 'black').sentence).toMatch(/^black is all but grey itself/);
    expect(betweenTwo(palette, 'black', 'white').sentence).toMatch(/are both all but grey/);
  });
});

describe('the smallest addition that makes one just-visible step', () => {
  const pile = { white: 5, 'deep-blue': 0.5, 'red-earth': 0.5 };
  const found = nudges(palette, pile);
  const before = predictMix(palette, pile);

  it('refuses a nudge it does not know, in one sentence', () => {
    expect(() => nudges(palette, pile, { nudges: ['prettier' as never] })).toThrow(
      /"prettier" is not a nudge; use warmer, cooler, lighter, darker, greyer/,
    );
    expect(() => nudges(palette, {})).toThrow(/holds no paint/);
  });

  it('makes every nudge here, and each does what it says', () => {
    expect(found.map((n) => n.nudge)).toEqual([...NUDGES]);
    for (const n of found) {
      const after = { ...pile } as Record<string, number>;
      for (const [id, g] of Object.entries(n.add)) after[id] = (after[id] ?? 0) + g;
      const now = predictMix(palette, after);
      expect(now.value - before.value).toBeCloseTo(n.value, 4);
      expect(now.lean - before.lean).toBeCloseTo(n.lean, 4);
      expect(now.chroma - before.chroma).toBeCloseTo(n.chroma, 4);
      expect(n.moved).toBeGreaterThan(0.8);
    }
    const by = Object.fromEntries(found.map((n) => [n.nudge, n]));
    expect(by['warmer']!.lean).toBeGreaterThan(0.5);
    expect(by['cooler']!.lean).toBeLessThan(-0.5);
    expect(by['lighter']!.value).toBeGreaterThan(0.05);
    expect(by['darker']!.value).toBeLessThan(-0.05);
    expect(by['greyer']!.chroma).toBeLessThan(-0.5);
  });

  it('holds the value while it warms, cools or greys', () => {
    for (const n of found.filter((x) => ['warmer', 'cooler', 'greyer'].includes(x.nudge))) {
      expect(Math.abs(n.value)).toBeLessThanOrEqual(0.02);
    }
  });

  it('scales with the pile', () => {
    const double = nudges(palette, { white: 10, 'deep-blue': 1, 'red-earth': 1 });
    double.forEach((n, i) => expect(n.grams).toBeCloseTo(2 * found[i]!.grams, 6));
  });

  it('a neutral cannot be made greyer', () => {
    expect(nudges(palette, { white: 10, black: 1 }, { nudges: ['greyer'] }).length).toBeLessThanOrEqual(1);
  });
});
