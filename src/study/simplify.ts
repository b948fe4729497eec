import { ciede2000Steps } from '../colour/ciede2000.ts';
import { median } from './median.ts';
import type { LabPicture } from './picture-lab.ts';

/**
 * Gives each pixel the family most common in the square around it, `radius` pixels each way; among equals it keeps its
 * own, else the lowest. What a brush could not paint, goes.
 */
export function joinSpecks(
  of: Uint8Array,
  width: number,
  height: number,
  radius: number,
  kinds: number,
): Uint8Array {
  if (radius === 0) return of;
  const made = new Uint8Array(of.length);
  const count = new Int32Array(kinds);
  for (let y = 0; y < height; y++) {
    const top = Math.max(0, y - radius);
    const bottom = Math.min(height - 1, y + radius);
    const column = (x: number, by: number): void => {
      for (let row = top; row <= bottom; row++) count[of[row * width + x]!]! += by;
    };
    count.fill(0);
    for (let x = 0; x < Math.min(radius, width); x++) column(x, 1);
    for (let x = 0; x < width; x++) {
      if (x + radius < width) column(x + radius, 1);
      if (x - radius - 1 >= 0) column(x - radius - 1, -1);
      const own = of[y * width + x]!;
      let best = own;
      for (let k = 0; k < kinds; k++) if (count[k]! > count[best]!) best = k;
      made[y * width + x] = best;
    }
  }
  return made;
}

/**
 * Joins the smallest family to the one whose median colour is nearest (CIEDE2000) until none is smaller than
 * `smallestShare` of the area or one is left.
 */
export function joinSmallFamilies(
  of: Uint8Array,
  picture: LabPicture,
  kinds: number,
  smallestShare: number,
): Uint8Array {
  const joined = of.slice();
  for (;;) {
    const pixels: number[][] = Array.from({ length: kinds }, () => []);
    joined.forEach((k, i) => pixels[k]!.push(i));
    const present = pixels.flatMap((own, kind) => (own.length ? [{ kind, own }] : []));
    if (present.length < 2) return joined;
    const small = present.reduce((least, f) => (f.own.length < least.own.length ? f : least));
    if (small.own.length >= smallestShare * joined.length) return joined;
    const colour = (own: number[]) => ({
      L: median(own.map((i) => picture.L[i]!)),
      a: median(own.map((i) => picture.a[i]!)),
      b: median(own.map((i) => picture.b[i]!)),
    });
    const mine = colour(small.own);
    const others = present.filter((f) => f !== small);
    const gaps = others.map((f) => ciede2000Steps(mine, colour(f.own)).dE00);
    const nearest = others[gaps.indexOf(Math.min(...gaps))]!;
    for (const i of small.own) joined[i] = nearest.kind;
  }
}
