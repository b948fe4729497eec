/**
 * Which facets of a body are seen from anywhere around it, so that only those are drawn at every turn. First what lies
 * deep inside goes: all cells about it hold facets too. The rest is looked for in a depth buffer from many sides
 * (E. Catmull, "A Subdivision Algorithm for Computer Display of Curved Surfaces", University of Utah, 1974).
 */
import { type Turn, see } from './orthographic.ts';

/** Edge of a cell, CIELAB units, and cells along the widest body. */
const CELL = 7;
const CELLS = 48;
/** Pixels for a CIELAB unit, and along the widest body. */
const FINE = 0.8;
const WIDE = Math.ceil(CELL * CELLS * FINE);
/** As near to the eye as this to what is nearest still counts as seen, CIELAB units: what meets at an edge. */
const NEAR = 0.7;
const SIDES = 24;

/** @param facets L, a, b of three corners each. @returns the same, without those that nobody sees. */
export function seenFromOutside(facets: Float32Array): Float32Array {
  return facingOut(notDeepInside(facets));
}

/**
 * Corners that lie in one small cell become one, at their mean, and facets that fall together are drawn once (J. Rossignac
 * and P. Borrel, "Multi-resolution 3D approximations for rendering complex scenes", in: Modeling in Computer Graphics,
 * Springer 1993, 455-465). Sheets that lie on one another have one colour, for a place in CIELAB is a colour.
 * @param edge of a cell, CIELAB units
 */
export function cornersJoined(facets: Float32Array, edge: number): Float32Array {
  const cells = new Map<string, { L: number; a: number; b: number; count: number }>();
  const keys: string[] = [];
  for (let p = 0; p < facets.length; p += 3) {
    const [L, a, b] = [facets[p]!, facets[p + 1]!, facets[p + 2]!];
    const key = `${Math.floor(L / edge)} ${Math.floor(a / edge)} ${Math.floor(b / edge)}`;
    const cell = cells.get(key) ?? { L: 0, a: 0, b: 0, count: 0 };
    cells.set(key, { L: cell.L + L, a: cell.a + a, b: cell.b + b, count: cell.count + 1 });
    keys.push(key);
  }
  const drawn = new Set<string>();
  const out: number[] = [];
  for (let i = 0; i < keys.length; i += 3) {
    const corners = keys.slice(i, i + 3);
    const facet = corners.toSorted().join();
    if (new Set(corners).size < 3 || drawn.has(facet)) continue;
    drawn.add(facet);
    for (const key of corners) {
      const { L, a, b, count } = cells.get(key)!;
      out.push(L / count, a / count, b / count);
    }
  }
  return Float32Array.from(out);
}

function notDeepInside(facets: Float32Array): Float32Array {
  const held = new Uint8Array(CELLS ** 3);
  const cell = (L: number, a: number, b: number): number =>
    (Math.floor(L / CELL) + 8) * CELLS ** 2 +
    (Math.floor(a / CELL) + CELLS / 2) * CELLS +
    Math.floor(b / CELL) +
    CELLS / 2;
  const middle = (f: number, c: number): number =>
    (facets[9 * f + c]! + facets[9 * f + 3 + c]! + facets[9 * f + 6 + c]!) / 3;
  const middleCell = (f: number): number => cell(middle(f, 0), middle(f, 1), middle(f, 2));
  for (let p = 0; p < facets.length; p += 3) held[cell(facets[p]!, facets[p + 1]!, facets[p + 2]!)] = 1;
  for (let f = 0; 9 * f < facets.length; f++) held[middleCell(f)] = 1;
  const about: number[] = [];
  for (const i of [-1, 0, 1])
    for (const j of [-1, 0, 1]) for (const k of [-1, 0, 1]) about.push(i * CELLS ** 2 + j * CELLS + k);
  return only(facets, (f) => {
    const at = middleCell(f);
    return about.some((step) => held[at + step] !== 1);
  });
}

/** Directions spread evenly over a half of the sphere; the other half sees the other side. */
function sides(): Turn[] {
  const golden = 180 * (3 - Math.sqrt(5));
  return Array.from({ length: SIDES }, (_, i) => ({
    around: (i * golden) % 360,
    above: (Math.asin((i + 0.5) / SIDES) * 180) / Math.PI,
  }));
}

function facingOut(facets: Float32Array): Float32Array {
  const count = facets.length / 9;
  const seen = new Uint8Array(count);
  const at = new Float32Array(facets.length);
  const near = new Float32Array(WIDE * WIDE);
  const far = new Float32Array(WIDE * WIDE);
  for (const turn of sides()) {
    for (let p = 0; p < facets.length; p += 3) {
      const s = see({ L: facets[p]!, a: facets[p + 1]!, b: facets[p + 2]! }, turn);
      at[p] = WIDE / 2 + FINE * s.x;
      at[p + 1] = WIDE / 2 + FINE * s.y;
      at[p + 2] = s.depth;
    }
    near.fill(-Infinity);
    far.fill(Infinity);
    for (let f = 0; f < count; f++) lookAt(at, f, near, far, true);
    for (let f = 0; f < count; f++) if (!seen[f] && lookAt(at, f, near, far, false)) seen[f] = 1;
  }
  return only(facets, (f) => seen[f] === 1);
}

/**
 * Goes over the pixels whose middle a facet covers, and its corners' own, however thin it is: sets the nearest and the
 * farthest depth there, or tells whether the facet is one of them anywhere.
 */
function lookAt(at: Float32Array, f: number, near: Float32Array, far: Float32Array, set: boolean): boolean {
  const p = 9 * f;
  const x0 = at[p]!;
  const y0 = at[p + 1]!;
  const z0 = at[p + 2]!;
  for (let q = p; q < p + 9; q += 3) {
    const pixel = Math.floor(at[q + 1]!) * WIDE + Math.floor(at[q]!);
    if (look(pixel, at[q + 2]!, near, far, set)) return true;
  }
  const [dx1, dy1, dz1] = [at[p + 3]! - x0, at[p + 4]! - y0, at[p + 5]! - z0];
  const [dx2, dy2, dz2] = [at[p + 6]! - x0, at[p + 7]! - y0, at[p + 8]! - z0];
  const area = dx1 * dy2 - dx2 * dy1;
  if (Math.abs(area) < 1e-9) return false;
  const top = Math.ceil(y0 + Math.min(0, dy1, dy2) - 0.5);
  const bottom = Math.floor(y0 + Math.max(0, dy1, dy2) - 0.5);
  const left = Math.ceil(x0 + Math.min(0, dx1, dx2) - 0.5);
  const right = Math.floor(x0 + Math.max(0, dx1, dx2) - 0.5);
  for (let row = top; row <= bottom; row++) {
    for (let column = left; column <= right; column++) {
      const x = column + 0.5 - x0;
      const y = row + 0.5 - y0;
      const w1 = (x * dy2 - dx2 * y) / area;
      const w2 = (dx1 * y - x * dy1) / area;
      if (w1 < 0 || w2 < 0 || w1 + w2 > 1) continue;
      if (look(row * WIDE + column, z0 + w1 * dz1 + w2 * dz2, near, far, set)) return true;
    }
  }
  return false;
}

function look(pixel: number, depth: number, near: Float32Array, far: Float32Array, set: boolean): boolean {
  if (!set) return depth >= near[pixel]! - NEAR || depth <= far[pixel]! + NEAR;
  if (depth > near[pixel]!) near[pixel] = depth;
  if (depth < far[pixel]!) far[pixel] = depth;
  return false;
}

function only(facets: Float32Array, keep: (facet: number) => boolean): Float32Array {
  const kept = Array.from({ length: facets.length / 9 }, (_, f) => f).filter(keep);
  const out = new Float32Array(9 * kept.length);
  kept.forEach((f, i) => out.set(facets.subarray(9 * f, 9 * f + 9), 9 * i));
  return out;
}
