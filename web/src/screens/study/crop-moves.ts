import type { Crop } from '../../../../src/study/index.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** The smallest side of a crop, px: below it there is nothing to part. */
const LEAST = 16;

const between = (v: number, low: number, high: number): number =>
  Math.min(high, Math.max(low, Math.round(v)));

/** The crop pushed by whole pixels, kept inside the picture at its own size. */
export function moved(crop: Crop, picture: Size, dx: number, dy: number): Crop {
  return {
    ...crop,
    x: between(crop.x + dx, 0, picture.width - crop.width),
    y: between(crop.y + dy, 0, picture.height - crop.height),
  };
}

/** The crop with its far corner pushed. */
export function resized(crop: Crop, dx: number, dy: number): Crop {
  return { ...crop, width: crop.width + dx, height: crop.height + dy };
}

/** The nearest crop that lies inside the picture and is not smaller than can be parted. */
export function fitted(crop: Crop, picture: Size): Crop {
  const least = (side: number): number => Math.min(LEAST, side);
  const x = between(crop.x, 0, picture.width - least(picture.width));
  const y = between(crop.y, 0, picture.height - least(picture.height));
  return {
    x,
    y,
    width: between(crop.width, least(picture.width), picture.width - x),
    height: between(crop.height, least(picture.height), picture.height - y),
  };
}

/** The whole picture. */
export function wholeOf({ width, height }: Size): Crop {
  return { x: 0, y: 0, width, height };
}
