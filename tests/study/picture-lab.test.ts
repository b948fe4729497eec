import Color from 'colorjs.io';
import { converter } from 'culori';
import { describe, expect, it } from 'vitest';
import { labPicture } from '../../src/study/picture-lab.ts';
import { PICTURE_LAB_OTHER_LIBRARY, SINGLE_PRECISION_LAB } from '../tolerances.ts';
import { type Rgb, paint } from './made-pictures.ts';

const lab65 = converter('lab65');
const colours: Rgb[] = [
  [0, 0, 0],
  [255, 255, 255],
  [119, 119, 119],
  [1, 2, 3],
  [200, 30, 40],
  [20, 60, 160],
  [240, 200, 40],
  [90, 120, 80],
];

describe('a picture as CIELAB', () => {
  it('makes white exactly L* 100 and black L* 0, without a tint', () => {
    const white = labPicture(
      paint(1, 1, () => [255, 255, 255]),
      10,
    );
    expect([white.L[0], white.a[0], white.b[0], white.Y[0]]).toEqual([100, 0, 0, 100]);
    const black = labPicture(
      paint(1, 1, () => [0, 0, 0]),
      10,
    );
    expect([black.L[0], black.a[0], black.b[0], black.Y[0]]).toEqual([0, 0, 0, 0]);
  });

  it.each(colours)('agrees with two other libraries on sRGB %i %i %i', (r, g, b) => {
    const made = labPicture(
      paint(1, 1, () => [r, g, b]),
      10,
    );
    const culori = lab65({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 })!;
    const other = new Color('srgb', [r / 255, g / 255, b / 255]).to('lab-d65').coords;
    const mine = [made.L[0]!, made.a[0]!, made.b[0]!];
    [culori.l, culori.a, culori.b].forEach((v, i) =>
      expect(Math.abs(mine[i]! - v)).toBeLessThan(PICTURE_LAB_OTHER_LIBRARY),
    );
    other.forEach((v, i) => expect(Math.abs(mine[i]! - Number(v))).toBeLessThan(PICTURE_LAB_OTHER_LIBRARY));
  });

  it('mixes light, not numbers, when it makes a picture smaller: a black-and-white check has half the light of white', () => {
    const check = paint(8, 8, (x, y) => ((x + y) % 2 ? [255, 255, 255] : [0, 0, 0]));
    const small = labPicture(check, 4);
    expect(small.width).toBe(4);
    small.Y.forEach((Y) => expect(Math.abs(Y - 50)).toBeLessThan(SINGLE_PRECISION_LAB));
  });

  it('never makes a picture larger', () => {
    const same = labPicture(
      paint(3, 2, () => [9, 9, 9]),
      100,
    );
    expect([same.width, same.height]).toEqual([3, 2]);
  });

  it('keeps a very long picture at least one pixel high', () => {
    const long = labPicture(
      paint(400, 1, () => [9, 9, 9]),
      50,
    );
    expect([long.width, long.height]).toEqual([50, 1]);
  });

  it('lays a transparent picture over white', () => {
    const clear = labPicture(
      paint(2, 2, () => [0, 0, 0], 0),
      10,
    );
    expect(clear.L[0]).toBe(100);
  });
});
