import type { Picture } from '../../src/study/picture.ts';

export type Rgb = readonly [r: number, g: number, b: number];

/** A picture painted by a rule. */
export function paint(
  width: number,
  height: number,
  colour: (x: number, y: number) => Rgb,
  opacity = 255,
): Picture {
  const rgba = new Uint8ClampedArray(4 * width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) rgba.set([...colour(x, y), opacity], 4 * (y * width + x));
  }
  return { width, height, rgba };
}

export const DARK_COOL: Rgb = [40, 50, 80];
export const DARK_WARM: Rgb = [80, 50, 35];
export const LIGHT_COOL: Rgb = [180, 200, 225];
export const LIGHT_WARM: Rgb = [235, 210, 170];
const QUARTERS = [DARK_COOL, DARK_WARM, LIGHT_COOL, LIGHT_WARM] as const;

/** Dark above light, cool left of warm: four families of a quarter each. */
export const quarters = (side = 40): Picture =>
  paint(side, side, (x, y) => QUARTERS[(x < side / 2 ? 0 : 1) + (y < side / 2 ? 0 : 2)]!);
