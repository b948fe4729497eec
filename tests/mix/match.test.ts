import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../src/colour/ciede2000.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { MixProblem, MixingStopped, matchColour, predictMix, splitDifference } from '../../src/mix/index.ts';
import { RECOVERED_SHARE, SAME_ARITHMETIC, VALUE_HELD_L } from '../tolerances.ts';
import { INVENTED_TUBES, inventedPalette } from './invented-palette.ts';

const palette = inventedPalette();
const lab = (L: number, a: number, b: number): Lab<'D65/10deg'> => ({ L, a, b, white: 'D65/10deg' });
const sum = (m: Readonly<Record<string, number>>): number => Object.values(m).reduce((x, y) => x + y, 0);

describe('what is refused, in one sentence', () => {
  it.each([
    ['something that is not a number', lab(50, Number.NaN, 0), /holds something that is not a number/],
    ['lightness off the scale', lab(140, 0, 0), /L\* runs from 0 \(black\) to 100 \(white\)/],
    ['lightness below nothing', lab(-3, 0, 0), /no surface's/],
    ['a colour outside the spectrum locus', lab(50, 40, 200), /outside the spectrum locus/],
    ['another colour outside the spectrum locus', lab(20, -90, 60), /outside the spectrum locus/],
  ])('%s', (_, target, sentence) => {
    expect(() => matchColour(palette, { lab: target })).toThrow(MixProblem);
    expect(() => matchColour(palette, { lab: target })).toThrow(sentence);
  });

  it('a spectrum in per cent, or of another length', () => {
    expect(() => matchColour(palette, { spectrum: new Float64Array(36).fill(50) })).toThrow(
      /from 0 to 1, not per cent/,
    );
    expect(() => matchColour(palette, { spectrum: new Float64Array(31).fill(0.5) })).toThrow(
      /36 numbers; 31 were given/,
    );
  });

  it('an empty palette, no tubes allowed, amounts of nothing', () => {
    const target = { lab: lab(50, 0, 0) };
    expect(() => matchColour({ ...palette, tubes: [] }, target)).toThrow(/holds no tubes/);
    expect(() => matchColour(palette, target, { maxTubes: 0 })).toThrow(/most tubes in a recipe is 0/);
    expect(() => matchColour(palette, target, { count: 2.5 })).toThrow(/number of recipes is 2.5/);
    expect(() => matchColour(palette, target, { grams: -1 })).toThrow(/amount of mix is -1 g/);
    expect(() => matchColour(palette, target, { only: ['nobody'] })).toThrow(/no tube "nobody"/);
  });
});

describe('degenerate palettes', () => {
  it('one tube: that tube, and how far off it is', () => {
    const one = matchColour(inventedPalette(['white']), { lab: lab(50, 0, 0) });
    expect(one.recipes).toHaveLength(1);
    expect(one.recipes[0]!.shares).toEqual({ white: 1 });
    expect(one.reached).toBe(false);
    expect(one.sentence).toMatch(/^Out of reach of these tubes; the nearest mix: too light by/);
  });

  it('two tubes with the same constants: both ways are found, neither twice', () => {
    const twins = inventedPalette(['white', 'deep-blue']);
    const both = { ...twins, tubes: [...twins.tubes, { ...twins.tubes[1]!, id: 'twin-blue' }] };
    const target = predictMix(twins, { white: 3, 'deep-blue': 1 }).lab;
    const { recipes } = matchColour(both, { lab: target });
    expect(recipes.map((r) => Object.keys(r.masses).toSorted().join())).toEqual([
      'deep-blue,white',
      'twin-blue,white',
    ]);
  });
});

describe('made targets', () => {
  it('gives back the recipe of any three tubes of a palette of three', () => {
    const three = ['white', 'deep-blue', 'red-earth'];
    const small = inventedPalette(three);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.02, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 }),
        (amounts) => {
          const made = Object.fromEntries(three.map((id, i) => [id, amounts[i]!]));
          const { recipes } = matchColour(small, { lab: predictMix(small, made).lab }, { closeEnough: 1e-4 });
          for (const id of three) {
            expect(Math.abs((recipes[0]!.shares[id] ?? 0) - made[id]! / sum(made))).toBeLessThan(
              RECOVERED_SHARE,
            );
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('gives back the recipe of four out of twelve from its spectrum, where metamerism tells it from the others', () => {
    for (const made of [
      { white: 5, 'deep-blue': 1, 'red-earth': 0.5, 'golden-yellow': 0.4 },
      { white: 2, 'cool-green': 0.3, 'warm-red': 1.2, black: 0.1 },
      { 'yellow-earth': 3, 'dark-earth': 1, white: 1, 'red-lake': 0.4 },
    ]) {
      const target = predictMix(palette, made).reflectance;
      const [best] = matchColour(palette, { spectrum: target }).recipes;
      for (const [id, m] of Object.entries(made)) {
        expect(Math.abs((best!.shares[id] ?? 0) - m / sum(made))).toBeLessThan(RECOVERED_SHARE);
      }
      expect(Math.max(...best!.metamerism!.map((m) => m.deltaE00))).toBeLessThan(0.05);
    }
  });

  it('reaches every colour that four of its tubes make', () => {
    const parts = fc.dictionary(
      fc.constantFrom(...INVENTED_TUBES),
      fc.double({ min: 0.02, max: 1, noNaN: true }),
      {
        minKeys: 1,
        maxKeys: 4,
      },
    );
    fc.assert(
      fc.property(parts, (made) => {
        const result = matchColour(palette, { lab: predictMix(palette, made).lab });
        expect(Math.min(...result.recipes.map((r) => r.deltaE00))).toBeLessThan(0.02);
        expect(result.sentence).toBe('Within reach of these tubes.');
      }),
      { numRuns: 25 },
    );
  });
});

describe('constraints always hold', () => {
  it('amounts above nothing that sum to what was asked, no more tubes than asked, only tubes asked for', () => {
    fc.assert(
      fc.property(
        fc.record({
          L: fc.integer({ min: 15, max: 92 }),
          a: fc.integer({ min: -25, max: 25 }),
          b: fc.integer({ min: -20, max: 25 }),
          maxTubes: fc.integer({ min: 1, max: 4 }),
          grams: fc.double({ min: 0.5, max: 500, noNaN: true }),
          priority: fc.constantFrom('evenly' as const, 'value' as const, 'hue' as const),
        }),
        ({ L, a, b, maxTubes, grams, priority }) => {
          const without = ['black', 'red-lake'];
          const { recipes } = matchColour(
            palette,
            { lab: lab(L, a, b) },
            { maxTubes, grams, priority, without },
          );
          expect(recipes.length).toBeGreaterThan(0);
          for (const r of recipes) {
            expect(Object.keys(r.masses).length).toBeLessThanOrEqual(maxTubes);
            expect(Object.values(r.masses).every((m) => m > 0)).toBe(true);
            expect(Math.abs(sum(r.masses) - grams)).toBeLessThan(1e-9 * grams);
            expect(Object.keys(r.masses).some((id) => without.includes(id))).toBe(false);
            expect(r.deltaE00).toBeCloseTo(ciede2000(lab(L, a, b), r.prediction.lab), 10);
          }
        },
      ),
      { numRuns: 25 },
    );
  });

  it('does not depend on the order of the tubes', () => {
    const target = { lab: lab(48, 12, -6) };
    const one = matchColour(palette, target);
    for (const ids of [INVENTED_TUBES.toReversed(), INVENTED_TUBES.toSorted()]) {
      const two = matchColour(inventedPalette(ids), target);
      expect(two.recipes.map((r) => r.masses)).toEqual(one.recipes.map((r) => r.masses));
    }
  });

  it("gives no recipe twice in disguise: none holds all of a better one's tubes without coming nearer", () => {
    for (const target of [lab(60, 0, 0), lab(20, 0, 0), lab(75, 3, 18), lab(40, -20, -10)]) {
      const { recipes } = matchColour(palette, { lab: target }, { count: 20 });
      recipes.forEach((r, i) => {
        for (const better of recipes.slice(0, i)) {
          const all = Object.keys(better.masses).every((id) => id in r.masses);
          if (all) expect(r.deltaE00).toBeLessThan(better.deltaE00);
        }
        for (const id of Object.keys(r.masses)) {
          const { [id]: _, ...rest } = r.masses;
          if (sum(rest) > 0)
            expect(ciede2000(predictMix(palette, rest).lab, r.prediction.lab)).toBeGreaterThan(0.01);
        }
      });
    }
  });

  it('keeps the best recipe where every one has a tube that hardly does anything', () => {
    const { recipes } = matchColour(palette, { lab: lab(13.75, -32.9, 10.64) }, { closeEnough: 0.5 });
    expect(recipes).toHaveLength(1);
    expect(recipes[0]!.deltaE00).toBeLessThan(0.01);
  });
});

describe('order of recipes', () => {
  it('by CIEDE2000, then fewest tubes, then how forgiving', () => {
    const { recipes } = matchColour(palette, { lab: lab(58, 6, 14) }, { count: 20, closeEnough: 1 });
    const best = Math.min(...recipes.map((r) => r.deltaE00));
    const near = recipes.filter((r) => r.deltaE00 < best + 1);
    expect(recipes.slice(0, near.length).every((r) => r.deltaE00 < best + 1)).toBe(true);
    const sizes = near.map((r) => Object.keys(r.masses).length);
    expect(sizes).toEqual(sizes.toSorted((x, y) => x - y));
  });

  it('a colour one of them reaches is reached, though a simpler one that is close enough stands first', () => {
    const target = { lab: lab(70, 5, 30) };
    const { recipes, reached, sentence } = matchColour(palette, target, { count: 1, closeEnough: 1 });
    expect(recipes[0]!.deltaE00).toBeGreaterThan(0.1);
    expect(matchColour(palette, target).recipes[0]!.deltaE00).toBeLessThan(0.1);
    expect(reached).toBe(true);
    expect(sentence).toBe('Within reach of these tubes.');
  });

  it('prefers cheap paint where all else is equal, and says what a slip costs', () => {
    const twins = inventedPalette(['white', 'deep-blue']);
    const both = { ...twins, tubes: [...twins.tubes, { ...twins.tubes[1]!, id: 'aaa-dear-blue' }] };
    const target = { lab: predictMix(twins, { white: 3, 'deep-blue': 1 }).lab };
    const plain = matchColour(both, target).recipes[0]!;
    expect(Object.keys(plain.masses)).toContain('aaa-dear-blue');
    const cheap = matchColour(both, target, { prices: { 'aaa-dear-blue': 3, 'deep-blue': 1 } }).recipes[0]!;
    expect(Object.keys(cheap.masses)).toContain('deep-blue');
    expect(cheap.price).toBeCloseTo(cheap.masses['deep-blue']!, 12);
    const { tube } = cheap.slip;
    const slipped = { ...cheap.masses, [tube]: cheap.masses[tube]! * 0.95 };
    expect(cheap.slip.deltaE00).toBeGreaterThanOrEqual(
      ciede2000(predictMix(both, slipped).lab, cheap.prediction.lab) - SAME_ARITHMETIC,
    );
  });
});

describe('out of reach', () => {
  const violet = lab(40, 55, -60);

  it('is said plainly, split into value, hue and chroma', () => {
    const { reached, sentence, recipes } = matchColour(palette, { lab: lab(50, -60, 5) });
    expect(reached).toBe(false);
    expect(sentence).toMatch(/^Out of reach of these tubes; the nearest mix: (value kept|too (light|dark))/);
    expect(recipes[0]!.split.chroma).toBeLessThan(0);
  });

  it('with the value held it is exact to a hundredth, whatever else goes', () => {
    for (const target of [violet, lab(60, -70, 20), lab(30, 50, 10)]) {
      const [best] = matchColour(palette, { lab: target }, { priority: 'value' }).recipes;
      expect(Math.abs(best!.prediction.lab.L - target.L)).toBeLessThan(VALUE_HELD_L);
    }
  });

  it('of a spectrum the Munsell value itself is held', () => {
    const spectrum = Float64Array.from({ length: 36 }, (_, i) => (i > 14 && i < 19 ? 0.9 : 0.02));
    const [best] = matchColour(palette, { spectrum }, { priority: 'value' }).recipes;
    expect(Math.abs(best!.split.value)).toBeLessThan(0.005);
  });

  it('with the hue held the hue is nearer than without', () => {
    const evenly = matchColour(palette, { lab: violet }).recipes[0]!;
    const held = matchColour(palette, { lab: violet }, { priority: 'hue' }).recipes[0]!;
    expect(Math.abs(held.split.hue)).toBeLessThanOrEqual(Math.abs(evenly.split.hue) + 1e-6);
    expect(held.prediction.chroma).toBeGreaterThan(evenly.prediction.chroma);
  });

  it('words: mix minus wanted, value first', () => {
    expect(splitDifference(lab(50, 0, 0), lab(50, -3, -5.2)).sentence).toBe('value kept, too cool by 6');
    expect(splitDifference(lab(50, 0, 0), lab(50, 3, 5.2)).sentence).toBe('value kept, too warm by 6');
    expect(splitDifference(lab(50, 40, 0), lab(50, 30, 0)).sentence).toBe('value kept, too weak by 10');
    expect(splitDifference(lab(50, 0, 40), lab(40, 0, 40)).sentence).toMatch(/^too dark by 0\.9\d of value$/);
    expect(splitDifference(lab(50, 10, 10), lab(50, 10, 10)).sentence).toBe('value, chroma and hue kept');
  });
});

describe('a long search', () => {
  it('stops when asked to, and says how far it is', () => {
    let done = 0;
    const watch = { onProgress: (d: number) => void (done = d) };
    matchColour(palette, { lab: lab(50, 5, 5) }, { watch });
    expect(done).toBeGreaterThan(0);
    expect(() => matchColour(palette, { lab: lab(50, 5, 5) }, { watch: { shouldStop: () => true } })).toThrow(
      MixingStopped,
    );
  });

  it('of more tubes than four is never worse than of four', () => {
    for (const target of [lab(50, -60, 5), lab(12, 0, 0), lab(45, 8, -8)]) {
      const four = matchColour(palette, { lab: target }, { maxTubes: 4 }).recipes[0]!;
      const six = matchColour(palette, { lab: target }, { maxTubes: 6 }).recipes[0]!;
      expect(six.deltaE00).toBeLessThan(four.deltaE00 + 0.02);
      expect(Object.keys(six.masses).length).toBeLessThanOrEqual(6);
    }
  });

  it('takes more tubes than the net holds fours of', () => {
    const many = inventedPalette();
    const twice = {
      ...many,
      tubes: [...many.tubes, ...many.tubes.map((t) => ({ ...t, id: `second-${t.id}` }))],
    };
    const made = predictMix(many, { white: 3, 'deep-blue': 1, 'golden-yellow': 0.5, 'warm-red': 0.3 }).lab;
    expect(matchColour(twice, { lab: made }).recipes[0]!.deltaE00).toBeLessThan(0.02);
  });
});
