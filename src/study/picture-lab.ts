/**
 * sRGB pixels to CIELAB under D65 and the 2 degree observer, for which sRGB is defined.
 * IEC 61966-2-1:1999, "Multimedia systems and equipment - Colour measurement and management - Part 2-1: sRGB":
 * decoding of the signal and the matrix from linear light to XYZ.
 *
 * A picture is a picture: its numbers are what a camera and someone's taste made of a scene, not measurements.
 */
import { labF } from '../colour/lab.ts';
import type { Picture } from './picture.ts';
import { refuseBadPicture } from './picture.ts';

/** Pixels as CIELAB, D65/2deg: one number per pixel and channel, and the luminance factor Y in per cent. */
export interface LabPicture {
  readonly width: number;
  readonly height: number;
  readonly L: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
  readonly Y: Float32Array;
}

/** The white of a picture's CIELAB. */
export const PICTURE_WHITE = 'D65/2deg';

const LINEAR = Float64Array.from({ length: 256 }, (_, i) => {
  const c = i / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
});

const TO_XYZ = [
  [0.4124, 0.3576, 0.1805],
  [0.2126, 0.7152, 0.0722],
  [0.0193, 0.1192, 0.9505],
] as const;
/** XYZ of sRGB white by the matrix itself; dividing by it makes full red, green and blue exactly L* 100, a* = b* = 0. */
const WHITE = TO_XYZ.map((row) => row[0] + row[1] + row[2]) as [number, number, number];

/** Linear light 0..1 of an 8-bit sRGB signal. */
export function linearOf(signal: number): number {
  return LINEAR[Math.min(255, Math.max(0, Math.round(signal)))]!;
}

/**
 * A picture made smaller so that its longer side is at most `longest` pixels, and turned to CIELAB. Each new pixel is
 * the mean of the light of those it covers, laid over white where the picture is transparent.
 * @throws RangeError for a picture whose sizes and numbers do not agree.
 */
export function labPicture(picture: Picture, longest: number): LabPicture {
  refuseBadPicture(picture);
  const shrink = Math.max(1, Math.max(picture.width, picture.height) / longest);
  const width = Math.max(1, Math.round(picture.width / shrink));
  const height = Math.max(1, Math.round(picture.height / shrink));
  const size = width * height;
  const made = {
    width,
    height,
    L: new Float32Array(size),
    a: new Float32Array(size),
    b: new Float32Array(size),
    Y: new Float32Array(size),
  };
  for (let y = 0; y < height; y++) {
    const y0 = Math.floor((y * picture.height) / height);
    const y1 = Math.max(y0 + 1, Math.floor(((y + 1) * picture.height) / height));
    for (let x = 0; x < width; x++) {
      const x0 = Math.floor((x * picture.width) / width);
      const x1 = Math.max(x0 + 1, Math.floor(((x + 1) * picture.width) / width));
      setPixel(made, y * width + x, meanLight(picture, x0, y0, x1, y1));
    }
  }
  return made;
}

type Light = readonly [r: number, g: number, b: number];

function meanLight({ rgba, width }: Picture, x0: number, y0: number, x1: number, y1: number): Light {
  let r = 0;
  let g = 0;
  let b = 0;
  for (let y = y0; y < y1; y++) {
    for (let x = x0; x < x1; x++) {
      const i = 4 * (y * width + x);
      const opacity = rgba[i + 3]! / 255;
      r += opacity * linearOf(rgba[i]!) + 1 - opacity;
      g += opacity * linearOf(rgba[i + 1]!) + 1 - opacity;
      b += opacity * linearOf(rgba[i + 2]!) + 1 - opacity;
    }
  }
  const n = (x1 - x0) * (y1 - y0);
  return [r / n, g / n, b / n];
}

function setPixel(to: LabPicture, at: number, [r, g, b]: Light): void {
  const xyz = TO_XYZ.map((row, i) => (row[0] * r + row[1] * g + row[2] * b) / WHITE[i]!) as [
    number,
    number,
    number,
  ];
  const fx = labF(xyz[0]);
  const fy = labF(xyz[1]);
  to.L[at] = 116 * fy - 16;
  to.a[at] = 500 * (fx - fy);
  to.b[at] = 200 * (fy - labF(xyz[2]));
  to.Y[at] = 100 * xyz[1];
}
