import { say } from './sentences.ts';

/**
 * A reference picture as the page hands it over: sRGB pixels, 8 bits a channel, in rows from the top left.
 */
export interface Picture {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue, opacity of each pixel, 0..255: 4 * width * height numbers. */
  readonly rgba: ArrayLike<number>;
}

/** A rectangle of whole pixels. */
export interface Crop {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The longest side a picture may come with; larger ones are made smaller by whoever opened the file. */
export const LARGEST_SIDE = 16_384;

/**
 * @throws RangeError when the sizes are not whole pixels or the array does not fit them.
 */
export function refuseBadPicture({ width, height, rgba }: Picture): void {
  if (!wholeSide(width) || !wholeSide(height)) {
    throw new RangeError(say('picture-size', { width, height, most: LARGEST_SIDE }));
  }
  if (rgba.length !== 4 * width * height) {
    throw new RangeError(
      say('picture-numbers', { width, height, count: 4 * width * height, given: rgba.length }),
    );
  }
}

/**
 * The part of a picture inside a crop.
 * @throws RangeError when the crop does not lie inside the picture.
 */
export function cropped(picture: Picture, crop: Crop): Picture {
  refuseBadPicture(picture);
  const inside =
    wholeSide(crop.width) &&
    wholeSide(crop.height) &&
    Number.isInteger(crop.x) &&
    Number.isInteger(crop.y) &&
    crop.x >= 0 &&
    crop.y >= 0 &&
    crop.x + crop.width <= picture.width &&
    crop.y + crop.height <= picture.height;
  if (!inside) {
    throw new RangeError(
      say('crop', {
        width: crop.width,
        height: crop.height,
        x: crop.x,
        y: crop.y,
        pictureWidth: picture.width,
        pictureHeight: picture.height,
      }),
    );
  }
  const rgba = new Uint8ClampedArray(4 * crop.width * crop.height);
  for (let row = 0; row < crop.height; row++) {
    const from = 4 * ((crop.y + row) * picture.width + crop.x);
    for (let i = 0; i < 4 * crop.width; i++) rgba[4 * row * crop.width + i] = picture.rgba[from + i]!;
  }
  return { width: crop.width, height: crop.height, rgba };
}

function wholeSide(n: number): boolean {
  return Number.isInteger(n) && n >= 1 && n <= LARGEST_SIDE;
}
