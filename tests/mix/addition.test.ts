import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../src/colour/ciede2000.ts';
import type { Lab } from '../../src/colour/lab.ts';
import {
  MixProblem,
  MixingStopped,
  addToPile,
  betweenTwo,
  knownPile,
  predictMix,
} from '../../src/mix/index.ts';
import { RECOVERED_SHARE, WEIGHED } from '../tolerances.ts';
import { INVENTED_TUBES, inventedPalette } from './invented-palette.ts';

const palette = inventedPalette();
const lab = (L: number, a: number, b: number): Lab<'D65/10deg'> => ({ L, a, b, white: 'D65/10deg' });
const plus = (
  one: Readonly<Record<string, number>>,
  two: Readonly<Record<string, number>>,
): Record<string, number> => {
  const out: Record<string, number> = { ...one };
  for (const [id, g] of Object.entries(two)) out[id] = (out[id] ?? 0) + g;
  return out;
};

describe('what is refused, in one sentence', () => {
  it('a pile of which nothing is known, or a reading without its grams', () => {
    const target = { lab: lab(60, 0, 0) };
    expect(() => addToPile(palette, {}, target)).toThrow(MixProblem);
    expect(() => addToPile(palette, {}, target)).toThrow(/Nothing is known of the pile/);
    expect(() => addToPile(palette, { reading: target }, target)).toThrow(/weigh it and give the grams/);
    expect(() => addToPile(palette, { masses: { white: 0 } }, target)).toThrow(/holds no paint/);
    expect(() => addToPile(palette, { masses: { white: -2 } }, target)).toThrow(/mass of "white" is -2/);
    expect(() => addToPile(palette, { masses: { white: 2 } }, target, { maxTubes: 7 })).toThrow(
      /7 tubes cannot be added/,
    );
  });

  it('stops when asked', () => {
    const watch = { shouldStop: () => true };
    expect(() => addToPile(palette, { masses: { white: 2 } }, { lab: lab(60, 0, 0) }, { watch })).toThrow(
      MixingStopped,
    );
  });
});

describe('a pile of known masses', () => {
  const pile = { white: 6, 'deep-blue': 1, 'yellow-earth': 1 };

  it('that is right already needs nothing', () => {
    const result = addToPile(palette, { masses: pile }, { lab: predictMix(palette, pile).lab });
    expect(result.now.deltaE00).toBeLessThan(1e-6);
    expect(result.additions).toEqual([]);
    expect(result.sentence).toMatch(/near enough as it is/);
  });

  it('that is nearer than can be seen is left as it is, whatever would bring it nearer still', () => {
    const { L, a, b } = predictMix(palette, pile).lab;
    const result = addToPile(palette, { masses: pile }, { lab: lab(L + 0.3, a, b) });
    expect(result.now.deltaE00).toBeGreaterThan(0.1);
    expect(result.additions.length).toBeGreaterThan(0);
    expect(result.nearEnough).toBe(true);
    expect(result.advised).toBeUndefined();
    expect(result.afresh.wastesLess).toBe(false);
    expect(result.sentence).toMatch(/near enough as it is/);
    const strict = addToPile(palette, { masses: pile }, { lab: lab(L + 0.3, a, b) }, { near: 0.1 });
    expect(strict.nearEnough).toBe(false);
    expect(strict.advised?.deltaE00).toBeLessThanOrEqual(0.1);
  });

  it('gets what was forgotten, and no more', () => {
    const forgotten = { 'warm-red': 0.4, white: 0.5 };
    const target = { lab: predictMix(palette, plus(pile, forgotten)).lab };
    const { additions } = addToPile(palette, { masses: pile }, target, { near: 0.05 });
    const best = additions.at(-1)!;
    expect(best.deltaE00).toBeLessThan(0.05);
    expect(best.grams).toBeLessThanOrEqual(0.9 + RECOVERED_SHARE);
  });

  it('additions are above nothing, least paint first, each larger one nearer, and give the colour they say', () => {
    const target = { lab: lab(66, 10, 8) };
    const { additions, now } = addToPile(palette, { masses: pile }, target);
    expect(additions.length).toBeGreaterThan(1);
    let last = { grams: 0, deltaE00: now.deltaE00 };
    for (const a of additions) {
      expect(Object.values(a.add).every((g) => g > 0)).toBe(true);
      expect(Object.keys(a.add).length).toBeLessThanOrEqual(3);
      expect(a.grams).toBeGreaterThan(last.grams);
      expect(a.deltaE00).toBeLessThan(last.deltaE00);
      expect(ciede2000(target.lab, predictMix(palette, plus(pile, a.add)).lab)).toBeCloseTo(a.deltaE00, 6);
      last = a;
    }
    expect(additions.at(-1)!.deltaE00).toBeLessThan(0.05);
  });

  it('keeps to the grams and the tubes allowed', () => {
    const { additions } = addToPile(
      palette,
      { masses: pile },
      { lab: lab(66, 10, 8) },
      {
        maxGrams: 2,
        only: ['white', 'red-earth'],
        maxTubes: 2,
      },
    );
    for (const a of additions) {
      expect(a.grams).toBeLessThanOrEqual(2);
      expect(Object.keys(a.add).every((id) => id === 'white' || id === 'red-earth')).toBe(true);
    }
  });

  it('does not depend on the order of the tubes', () => {
    const target = { lab: lab(66, 10, 8) };
    const one = addToPile(palette, { masses: pile }, target);
    const two = addToPile(inventedPalette(INVENTED_TUBES.toReversed()), { masses: pile }, target);
    expect(two.additions.map((a) => a.add)).toEqual(one.additions.map((a) => a.add));
    expect(two.afresh).toEqual(one.afresh);
  });

  it('says when starting afresh wastes less: a strong blue pile wanted as a pale tint', () => {
    const far = addToPile(
      palette,
      { masses: { 'green-blue': 5 } },
      { lab: predictMix(palette, { white: 40, 'green-blue': 0.2 }).lab },
      { maxGrams: 2000 },
    );
    expect(far.afresh.wastesLess).toBe(true);
    expect(far.sentence).toMatch(/more paint than mixing afresh takes/);
    const close = addToPile(
      palette,
      { masses: pile },
      { lab: predictMix(palette, plus(pile, { white: 0.5 })).lab },
    );
    expect(close.afresh.wastesLess).toBe(false);
  });
});

describe('what a person reads', () => {
  it('names tubes by their labels; two that carry the same, by their ids besides', () => {
    const label: Record<string, string> = {
      white: 'zinc white',
      'deep-blue': 'old blue',
      'green-blue': 'old blue',
    };
    const named = {
      ...palette,
      tubes: palette.tubes.map((t) => ({ ...t, ...(label[t.id] ? { label: label[t.id]! } : {}) })),
    };
    const pile = { 'deep-blue': 1, 'yellow-earth': 1 };
    const lighter = { lab: predictMix(palette, { ...pile, white: 1 }).lab };
    expect(addToPile(named, { masses: pile }, lighter, { only: ['white'] }).sentence).toMatch(
      /^Add [\d.]+ g zinc white: /,
    );
    expect(betweenTwo(named, 'deep-blue', 'green-blue').sentence).toMatch(
      /^old blue \(deep-blue\) and old blue \(green-blue\) /,
    );
    expect(() => predictMix(named, { white: -1 })).toThrow(/mass of "zinc white" is -1/);
    expect(() => predictMix(named, { pink: 1 })).toThrow(/no tube "pink"; it has zinc white \(white\), /);
  });
});

describe('additions a scale can weigh', () => {
  const scale = { resolution: 0.01, smallestPour: 0.1 };
  const tubes = INVENTED_TUBES.filter((id) => id !== 'white');
  /** Piles off by a little of one or two tubes, as a hand leaves them, and what they were meant to be. */
  const piles = fc.record({
    pile: fc.record({
      white: fc.double({ min: 2, max: 12, noNaN: true }),
      [tubes[0]!]: fc.double({ min: 0.1, max: 1, noNaN: true }),
      [tubes[5]!]: fc.double({ min: 0.1, max: 2, noNaN: true }),
    }),
    short: fc.tuple(fc.constantFrom(...tubes), fc.double({ min: 0.01, max: 1, noNaN: true })),
  });

  it('are whole steps of it, none under the smallest pour, within the grams allowed, and give the colour they say', () => {
    fc.assert(
      fc.property(piles, ({ pile, short: [id, g] }) => {
        const target = { lab: predictMix(palette, plus(pile, { [id]: g })).lab };
        const maxGrams = 6;
        const { additions, now } = addToPile(palette, { masses: pile }, target, {
          scale,
          maxGrams,
          only: ['white', id, 'yellow-earth'],
        });
        let last = { grams: 0, deltaE00: now.deltaE00 };
        for (const a of additions) {
          for (const grams of Object.values(a.add)) {
            expect(Math.abs(grams / 0.01 - Math.round(grams / 0.01))).toBeLessThan(1e-6);
            expect(grams).toBeGreaterThanOrEqual(0.1 - WEIGHED);
          }
          expect(a.grams).toBeLessThanOrEqual(maxGrams + WEIGHED);
          expect(a.grams).toBeGreaterThan(last.grams);
          expect(a.deltaE00).toBeLessThan(last.deltaE00);
          expect(ciede2000(target.lab, predictMix(palette, plus(pile, a.add)).lab)).toBeCloseTo(
            a.deltaE00,
            6,
          );
          last = a;
        }
      }),
      { numRuns: 12 },
    );
  });

  it('are never worse than the exact ones rounded to it, for about as much paint', () => {
    fc.assert(
      fc.property(piles, ({ pile, short: [id, g] }) => {
        const target = { lab: predictMix(palette, plus(pile, { [id]: g })).lab };
        const options = { only: ['white', id, 'yellow-earth'] };
        const exact = addToPile(palette, { masses: pile }, target, options);
        const weighed = addToPile(palette, { masses: pile }, target, { ...options, scale });
        for (const { add, grams } of exact.additions) {
          const rounded = Object.fromEntries(
            Object.entries(add).map(([t, m]) => [
              t,
              m >= 0.1 ? Math.round(m / 0.01) * 0.01 : m >= 0.05 ? 0.1 : 0,
            ]),
          );
          const most =
            1.1 *
              Math.max(
                grams,
                Object.values(rounded).reduce((a, b) => a + b, 0),
              ) +
            0.02;
          const off = ciede2000(target.lab, predictMix(palette, plus(pile, rounded)).lab);
          const best = Math.min(
            weighed.now.deltaE00,
            ...weighed.additions.filter((a) => a.grams <= most).map((a) => a.deltaE00),
          );
          // One in the list must come nearer by 0.05 than a smaller one to be worth listing.
          expect(best).toBeLessThanOrEqual(off + 0.05 + 1e-6);
        }
      }),
      { numRuns: 12 },
    );
  });

  it('pour a strong tube with a light one beside it, where alone it would be too much', () => {
    const pile = { white: 8, 'yellow-earth': 0.5 };
    const target = { lab: predictMix(palette, plus(pile, { 'green-blue': 0.06 })).lab };
    const rounded = predictMix(palette, plus(pile, { 'green-blue': 0.1 }));
    const { advised } = addToPile(palette, { masses: pile }, target, {
      scale,
      only: ['white', 'green-blue', 'yellow-earth'],
    });
    expect(advised!.add['green-blue']).toBeCloseTo(0.1, 9);
    expect(advised!.deltaE00).toBeLessThan(0.5 * ciede2000(target.lab, rounded.lab));
  });

  it('say so where nothing that can be weighed brings it nearer', () => {
    const pile = { white: 1 };
    const target = { lab: predictMix(palette, plus(pile, { 'green-blue': 0.003 })).lab };
    const { additions, sentence } = addToPile(palette, { masses: pile }, target, {
      scale: { resolution: 0.1, smallestPour: 0.5 },
      maxGrams: 2,
    });
    expect(additions).toEqual([]);
    expect(sentence).toMatch(
      /Nothing this scale can weigh brings the pile nearer: 0\.\d+ g .* smallest pour of 0\.5 g/,
    );
  });

  it('and a mix afresh comes in its steps too', () => {
    const pile = { 'green-blue': 5 };
    const target = { lab: predictMix(palette, { white: 40, 'green-blue': 0.2 }).lab };
    const { afresh } = addToPile(palette, { masses: pile }, target, { scale, maxGrams: 2000 });
    for (const g of [...Object.values(afresh.masses), ...afresh.preTints.map((t) => t.pour)]) {
      expect(Math.abs(g / 0.01 - Math.round(g / 0.01))).toBeLessThan(1e-6);
    }
    expect(afresh.wastesLess).toBe(true);
  });
});

describe('a pile of which there is a reading', () => {
  const made = { white: 5, 'deep-blue': 1, 'red-earth': 0.6 };

  it('alone: the masses are made out of it', () => {
    const read = predictMix(palette, made);
    const known = knownPile(
      palette,
      { reading: { lab: read.lab }, grams: 6.6, tubes: Object.keys(made) },
      'D65/10deg',
    );
    expect(known.estimated).toBe(true);
    expect(known.misfit!).toBeLessThan(0.02);
    for (const [id, g] of Object.entries(made)) {
      expect(Math.abs((known.masses[id] ?? 0) - g) / 6.6).toBeLessThan(RECOVERED_SHARE);
    }
  });

  it('beside its masses: what the masses do not explain stays with the pile', () => {
    const truth = { white: 5, 'deep-blue': 1.25, 'red-earth': 0.6 };
    const read = predictMix(palette, truth);
    const target = { lab: predictMix(palette, plus(truth, { white: 3 })).lab };
    const missed = (add: Readonly<Record<string, number>>): number =>
      ciede2000(target.lab, predictMix(palette, plus(truth, add)).lab);
    const blind = addToPile(palette, { masses: made }, target, { near: 0.1 }).advised!;
    for (const reading of [{ lab: read.lab }, { spectrum: read.reflectance }]) {
      const seeing = addToPile(palette, { masses: made, reading }, target, { near: 0.1 }).advised!;
      expect(missed(seeing.add)).toBeLessThan(0.5 * missed(blind.add));
    }
  });
});
