import { describe, expect, it } from 'vitest';
import { FAMILY_SETTINGS, familiesOf } from '../../src/study/families.ts';
import { labPicture } from '../../src/study/picture-lab.ts';
import { DARK_COOL, LIGHT_WARM, paint, quarters } from './made-pictures.ts';

const two = { ...FAMILY_SETTINGS, steps: 2, specks: 0 };

describe('families of a picture', () => {
  it('make one family of a plain picture', () => {
    const { families } = familiesOf(
      labPicture(
        paint(5, 5, () => LIGHT_WARM),
        50,
      ),
      two,
    );
    expect(families).toHaveLength(1);
    expect(families[0]).toMatchObject({ step: 0, side: 'warm', share: 1 });
  });

  it('find the four quarters of a made picture, dark before light and cool before warm', () => {
    const found = familiesOf(labPicture(quarters(), 100), two);
    expect(found.families.map((f) => [f.step, f.side, f.share])).toEqual([
      [0, 'cool', 0.25],
      [0, 'warm', 0.25],
      [1, 'cool', 0.25],
      [1, 'warm', 0.25],
    ]);
    expect([found.of[0], found.of[39], found.of[39 * 40], found.of[1599]]).toEqual([0, 1, 2, 3]);
  });

  it('name a family by the middle of its own pixels', () => {
    const alone = labPicture(
      paint(1, 1, () => DARK_COOL),
      10,
    );
    const { families } = familiesOf(labPicture(quarters(), 100), two);
    expect(families[0]!.lab).toEqual({ L: alone.L[0], a: alone.a[0], b: alone.b[0], white: 'D65/2deg' });
  });

  it('call a picture that is warm all over warm from the neutral, and part it within each step', () => {
    const warm = labPicture(
      paint(10, 10, (x) => (x < 5 ? [200, 150, 100] : [200, 155, 130])),
      50,
    );
    const one = { ...two, steps: 2 };
    expect(new Set(familiesOf(warm, one).families.map((f) => f.side))).toEqual(new Set(['warm']));
    const parted = familiesOf(warm, { ...one, split: 'within each step' as const });
    expect(parted.families.length).toBeGreaterThanOrEqual(2);
  });

  it('leave warm and cool together when asked', () => {
    const { families } = familiesOf(labPicture(quarters(), 100), { ...two, split: 'none' });
    expect(families.map((f) => f.side)).toEqual(['whole', 'whole']);
  });

  it('join a family too small to paint to the nearest in colour', () => {
    // A 2 by 2 speck of lighter blue in a dark blue ground beside a light warm half.
    const speck = paint(40, 40, (x, y) =>
      x >= 20 ? LIGHT_WARM : x < 2 && y < 2 ? [90, 105, 140] : DARK_COOL,
    );
    const kept = familiesOf(labPicture(speck, 100), { ...two, steps: 3, smallestShare: 0 });
    const joined = familiesOf(labPicture(speck, 100), { ...two, steps: 3, smallestShare: 0.01 });
    expect(kept.families).toHaveLength(3);
    expect(joined.families).toHaveLength(2);
    expect(joined.of[0]).toBe(joined.of[5 * 40 + 5]);
  });

  it('paint over specks smaller than a brush', () => {
    const freckled = paint(40, 40, (x, y) => (x % 8 === 3 && y % 8 === 3 ? LIGHT_WARM : DARK_COOL));
    const { families } = familiesOf(labPicture(freckled, 100), { ...two, smallestShare: 0, specks: 2 });
    expect(families).toHaveLength(1);
  });

  it('cover the whole picture: shares sum to one', () => {
    const { families } = familiesOf(labPicture(quarters(41), 100));
    expect(families.reduce((sum, f) => sum + f.share, 0)).toBeCloseTo(1, 12);
  });

  it.each([
    [{ steps: 1 }, /1 value steps were asked for; a study has 2 to 9/],
    [{ steps: 2.5 }, /2.5 value steps/],
    [{ smallestShare: 0.5 }, /between 0 and 0.5/],
    [{ smallestShare: Number.NaN }, /between 0 and 0.5/],
    [{ specks: -1 }, /whole number from 0 to 20/],
  ])('refuse settings out of range: %o', (wrong, sentence) => {
    expect(() => familiesOf(labPicture(quarters(), 50), { ...FAMILY_SETTINGS, ...wrong })).toThrow(sentence);
  });
});
