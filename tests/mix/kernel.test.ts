import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GRID_NM, GRID_SIZE } from '../../src/colour/grid.ts';
import { labOfReflectance } from '../../src/colour/lab.ts';
import { tristimulusWeights } from '../../src/colour/tristimulus.ts';
import { surfaceFor } from '../../src/fit/optics/surface.ts';
import type { MixingPalette } from '../../src/fit/palette.ts';
import { predictReflectance } from '../../src/fit/predict.ts';
import { CHANNELS, MixProblem, effectiveParts, mixKernel, predictMix, tubeSet } from '../../src/mix/index.ts';
import { PRINTED_6_DECIMALS_REFLECTANCE, SAME_ARITHMETIC, SLOPE_BY_DIFFERENCES } from '../tolerances.ts';
import { INVENTED_TUBES, inventedPalette } from './invented-palette.ts';

const palette = inventedPalette();

/** A mix of one to six of the invented tubes, parts from a thousandth up. */
const anyMix = fc
  .dictionary(fc.constantFrom(...INVENTED_TUBES), fc.double({ min: 1e-3, max: 10, noNaN: true }), {
    minKeys: 1,
    maxKeys: 6,
  })
  .filter((m) => Object.keys(m).length > 0);

/** Tubes of flat constants, for check values worked at one wavelength. */
function flatPalette(constants: Record<string, readonly [K: number, S: number]>): MixingPalette {
  return {
    ...inventedPalette(['white']),
    surface: surfaceFor('45/0'),
    tubes: Object.entries(constants).map(([id, [K, S]]) => ({
      id,
      lnK: new Float64Array(GRID_SIZE).fill(Math.log(K)),
      lnS: new Float64Array(GRID_SIZE).fill(Math.log(S)),
      own: [],
      shared: [],
    })),
  };
}

describe('what is refused', () => {
  const sentences = (fn: () => unknown): string => {
    try {
      fn();
    } catch (problem) {
      expect(problem).toBeInstanceOf(RangeError);
      return (problem as Error).message;
    }
    return 'nothing was refused';
  };

  it('an empty palette, in one sentence', () => {
    const empty = { ...palette, tubes: [] };
    expect(sentences(() => tubeSet(empty))).toBe(
      'The palette holds no tubes; measure or import at least one before mixing.',
    );
  });

  it('a tube nobody has, naming those there are', () => {
    expect(sentences(() => tubeSet(palette, { only: ['puce'] }))).toMatch(
      /no tube "puce"; it has white, deep-blue/,
    );
    expect(sentences(() => effectiveParts(tubeSet(palette), { puce: 1 }))).toMatch(/no tube "puce"/);
  });

  it('a mass below nothing, a mass that is no number, and no paint at all', () => {
    const set = tubeSet(palette);
    expect(sentences(() => effectiveParts(set, { white: -1 }))).toMatch(
      /mass of "white" is -1; give a number of grams/,
    );
    expect(sentences(() => effectiveParts(set, { white: Number.NaN }))).toMatch(/mass of "white" is NaN/);
    expect(sentences(() => effectiveParts(set, { white: 0 }))).toMatch(/holds no paint/);
    expect(sentences(() => predictMix(palette, {}))).toMatch(/holds no paint/);
    expect(sentences(() => predictMix(palette, { white: Number.POSITIVE_INFINITY }))).toMatch(/Infinity/);
  });

  it('leaving every tube out, and two tubes with one id', () => {
    expect(sentences(() => tubeSet(palette, { without: INVENTED_TUBES }))).toMatch(/Every tube was left out/);
    const twice = { ...palette, tubes: [palette.tubes[0]!, palette.tubes[0]!] };
    expect(sentences(() => tubeSet(twice))).toMatch(/Two tubes carry the id "white"/);
  });

  it('constants that are not numbers', () => {
    const broken = inventedPalette(['white', 'black']);
    broken.tubes[1]!.lnK[3] = Number.NaN;
    expect(() => tubeSet(broken)).toThrow(MixProblem);
    expect(sentences(() => tubeSet(broken))).toMatch(
      /Tube "black" has a constant that is not a number at sample 4/,
    );
  });
});

describe('the laws of two-constant mixing', () => {
  it('only ratios count', () => {
    fc.assert(
      fc.property(anyMix, fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (mix, factor) => {
        const one = predictMix(palette, mix).reflectance;
        const two = predictMix(
          palette,
          Object.fromEntries(Object.entries(mix).map(([k, v]) => [k, v * factor])),
        ).reflectance;
        one.forEach((r, i) => expect(two[i]).toBeCloseTo(r, 12));
      }),
      { numRuns: 50 },
    );
  });

  it('scaling every K and S by one factor changes nothing', () => {
    const scaled: MixingPalette = {
      ...palette,
      tubes: palette.tubes.map((t) => ({
        ...t,
        lnK: t.lnK.map((k) => k + 1.3),
        lnS: t.lnS.map((s) => s + 1.3),
      })),
    };
    fc.assert(
      fc.property(anyMix, (mix) => {
        const one = predictMix(palette, mix).lab;
        const two = predictMix(scaled, mix).lab;
        expect(Math.abs(one.L - two.L) + Math.abs(one.a - two.a) + Math.abs(one.b - two.b)).toBeLessThan(
          1e-9,
        );
      }),
      { numRuns: 50 },
    );
  });

  it('the mediant bound: at each wavelength a mix lies between its lightest and its darkest tube', () => {
    fc.assert(
      fc.property(anyMix, (mix) => {
        const mixed = predictMix(palette, mix).reflectance;
        const alone = Object.keys(mix).map((id) => predictMix(palette, { [id]: 1 }).reflectance);
        mixed.forEach((r, i) => {
          const at = alone.map((a) => a[i]!);
          expect(r).toBeGreaterThanOrEqual(Math.min(...at) - SAME_ARITHMETIC);
          expect(r).toBeLessThanOrEqual(Math.max(...at) + SAME_ARITHMETIC);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('a paint mixed with itself is that paint, and one tube alone is its masstone', () => {
    const same = inventedPalette(['white', 'deep-blue']);
    const twin = { ...same.tubes[1]!, id: 'twin' };
    const twins = { ...same, tubes: [...same.tubes, twin] };
    const mixed = predictMix(twins, { 'deep-blue': 0.3, twin: 0.7 }).reflectance;
    predictMix(twins, { 'deep-blue': 1 }).reflectance.forEach((r, i) => expect(mixed[i]).toBeCloseTo(r, 13));
  });

  it('a chromatic black: Y can be below that of every tube in the mix', () => {
    const dark = predictMix(palette, { 'cool-green': 0.4, 'red-lake': 1 }).xyz.Y;
    expect(dark).toBeLessThan(predictMix(palette, { 'cool-green': 1 }).xyz.Y);
    expect(dark).toBeLessThan(predictMix(palette, { 'red-lake': 1 }).xyz.Y);
  });
});

describe('check values: a two-constant ladder through the 45/0 surface (worked from the formulas, six decimals)', () => {
  const ladder = flatPalette({ white: [0.002, 1], blue: [2, 0.05] });
  it.each([
    [1, 0, 0.004979],
    [1, 1, 0.08041],
    [1, 4, 0.201422],
    [1, 16, 0.386251],
    [1, 64, 0.581572],
  ])('%d : %d reads %f', (blue, white, R) => {
    const { reflectance } = predictMix(ladder, { blue, white });
    expect(Math.abs(reflectance[10]! - R)).toBeLessThan(PRINTED_6_DECIMALS_REFLECTANCE);
  });

  it('three paints 0.5, 0.4, 0.1', () => {
    const three = flatPalette({ a: [0.002, 1], b: [1.5, 0.45], c: [2, 0.05] });
    const { reflectance } = predictMix(three, { a: 0.5, b: 0.4, c: 0.1 });
    expect(Math.abs(reflectance[0]! - 0.11584291)).toBeLessThan(PRINTED_6_DECIMALS_REFLECTANCE);
  });
});

describe('the kernel', () => {
  it.each([1, 2, 3, 4, 5, 9])(
    'gives the colour of the long way round with %d tubes, and slopes to match',
    (m) => {
      const set = tubeSet(palette);
      const kernel = mixKernel(set);
      const weights = tristimulusWeights('D65/10deg');
      fc.assert(
        fc.property(
          fc.array(fc.double({ min: 1e-3, max: 1, noNaN: true }), { minLength: m, maxLength: m }),
          fc.integer({ min: 0, max: 3 }),
          (amounts, from) => {
            const chosen = Array.from({ length: m }, (_, j) => from + j);
            const x = Float64Array.from(amounts);
            kernel.choose(chosen);
            kernel.colour(x);
            const masses = Object.fromEntries(chosen.map((t, j) => [set.ids[t]!, x[j]! / set.strength[t]!]));
            const lab = labOfReflectance(predictReflectance(palette, masses).measured, weights);
            expect(kernel.u[0]).toBeCloseTo(lab.L, 9);
            expect(kernel.u[1]).toBeCloseTo(lab.a, 9);
            expect(kernel.u[2]).toBeCloseTo(lab.b, 9);
            kernel.colourAndSlopes(x);
            const J = Float64Array.from(kernel.J.subarray(0, CHANNELS * m));
            const scale = Math.max(1, ...J.map(Math.abs));
            for (let j = 0; j < m; j++) {
              const h = 1e-5 * x[j]!;
              const at = (off: number): Float64Array => {
                kernel.colour(x.with(j, x[j]! + off));
                return Float64Array.from(kernel.u);
              };
              const [up, down] = [at(h), at(-h)];
              for (let c = 0; c < CHANNELS; c++) {
                const slope = (up[c]! - down[c]!) / (2 * h);
                expect(Math.abs(J[c * m + j]! - slope) / scale).toBeLessThan(SLOPE_BY_DIFFERENCES);
              }
            }
          },
        ),
        { numRuns: 15 },
      );
    },
  );

  it('holds Munsell value in its fourth channel: L* of Y under C/2deg', () => {
    const set = tubeSet(palette, { white: 'A/10deg' });
    const kernel = mixKernel(set);
    kernel.choose([set.ids.indexOf('warm-red')]);
    kernel.colour(Float64Array.of(1));
    const { reflectance } = predictMix(palette, { 'warm-red': 1 }, 'A/10deg');
    const c = labOfReflectance(reflectance, tristimulusWeights('C/2deg'));
    expect(kernel.u[3]).toBeCloseTo(c.L, 3);
  });
});

it('the invented tubes look like paints: white light, black dark, yellow strong', () => {
  expect(GRID_NM).toHaveLength(GRID_SIZE);
  expect(predictMix(palette, { white: 1 }).value).toBeGreaterThan(9.3);
  expect(predictMix(palette, { black: 1 }).value).toBeLessThan(1);
  expect(predictMix(palette, { 'lemon-yellow': 1 }).chroma).toBeGreaterThan(80);
});
