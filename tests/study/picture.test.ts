import { describe, expect, it } from 'vitest';
import { cropped } from '../../src/study/picture.ts';
import { paint } from './made-pictures.ts';

const numbered = paint(6, 4, (x, y) => [x, y, 0]);

describe('cropping a picture', () => {
  it('keeps the whole picture when the crop is the whole picture', () => {
    expect(cropped(numbered, { x: 0, y: 0, width: 6, height: 4 })).toEqual(numbered);
  });

  it('takes one pixel', () => {
    const one = cropped(numbered, { x: 5, y: 3, width: 1, height: 1 });
    expect([...(one.rgba as Uint8ClampedArray)]).toEqual([5, 3, 0, 255]);
  });

  it('keeps rows and columns where they belong', () => {
    const part = cropped(numbered, { x: 2, y: 1, width: 3, height: 2 });
    expect([part.rgba[0], part.rgba[1]]).toEqual([2, 1]);
    expect([part.rgba[4 * 5], part.rgba[4 * 5 + 1]]).toEqual([4, 2]);
  });

  it.each([
    { x: -1, y: 0, width: 2, height: 2 },
    { x: 5, y: 0, width: 2, height: 2 },
    { x: 0, y: 0, width: 0, height: 2 },
    { x: 0.5, y: 0, width: 2, height: 2 },
    { x: 0, y: 0, width: Number.NaN, height: 2 },
  ])('refuses a crop outside the picture in one sentence: %o', (crop) => {
    expect(() => cropped(numbered, crop)).toThrow(
      /reaches outside the picture of 6 by 4 pixels; draw it inside/,
    );
  });

  it('refuses a picture whose numbers do not fit its size', () => {
    expect(() => cropped({ ...numbered, width: 7 }, { x: 0, y: 0, width: 1, height: 1 })).toThrow(
      /7 by 4 pixels has 112 numbers; 96 were given/,
    );
  });
});
