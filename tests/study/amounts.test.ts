import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ASSUMED_DENSITY, CANVAS_SETTINGS, amountFor } from '../../src/study/amounts.ts';

const canvas = { widthCentimetres: 10, heightCentimetres: 10, filmMicrometres: 100, loss: 0 };

describe('amounts of paint', () => {
  it('fill one square decimetre 0.1 mm deep with one millilitre', () => {
    const amount = amountFor(1, { a: 3 }, { a: 1.5 }, canvas);
    expect(amount.total).toBeCloseTo(1.5, 12);
    expect(amount.assumedDensity).toEqual([]);
  });

  it('add volumes, not densities: equal masses of 1 and 3 g/ml weigh 1.5 g a millilitre', () => {
    // Two grams fill 1/1 + 1/3 ml, so a millilitre weighs 2 / (4/3) = 1.5 g.
    const amount = amountFor(1, { light: 1, heavy: 1 }, { light: 1, heavy: 3 }, canvas);
    expect(amount.total).toBeCloseTo(1.5, 12);
    expect(amount.grams['light']).toBeCloseTo(0.75, 12);
  });

  it('say whose density was assumed', () => {
    const amount = amountFor(0.5, { a: 1, b: 1 }, { a: ASSUMED_DENSITY }, canvas);
    expect(amount.assumedDensity).toEqual(['b']);
    expect(amount.total).toBeCloseTo(0.5 * ASSUMED_DENSITY, 12);
  });

  it('leave out a tube with no mass', () => {
    expect(Object.keys(amountFor(1, { a: 1, b: 0 }, {}, canvas).grams)).toEqual(['a']);
  });

  it('do not depend on the scale of the masses, and grow with the loss', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (k) => {
        const one = amountFor(0.2, { a: 1, b: 2 }, { a: 1.1, b: 2 }, CANVAS_SETTINGS);
        const other = amountFor(0.2, { a: k, b: 2 * k }, { a: 1.1, b: 2 }, CANVAS_SETTINGS);
        expect(other.total).toBeCloseTo(one.total, 9);
      }),
    );
    const bare = amountFor(1, { a: 1 }, {}, canvas).total;
    expect(amountFor(1, { a: 1 }, {}, { ...canvas, loss: 0.5 }).total).toBeCloseTo(1.5 * bare, 12);
  });

  it.each([
    [{ widthCentimetres: 0 }, /canvas width is 0 cm/],
    [{ heightCentimetres: Number.NaN }, /canvas height is NaN cm/],
    [{ filmMicrometres: 9000 }, /film is 9000 micrometres/],
    [{ loss: -1 }, /loss is -1/],
  ])('refuse a canvas that makes no sense: %o', (wrong, sentence) => {
    expect(() => amountFor(1, { a: 1 }, {}, { ...canvas, ...wrong })).toThrow(sentence);
  });

  it('refuse a recipe without paint', () => {
    expect(() => amountFor(1, {}, {}, canvas)).toThrow(/no paint in it/);
  });
});
