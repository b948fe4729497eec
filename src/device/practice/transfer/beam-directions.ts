/**
 * Directions for a film with the beam and the eye among them, so that a beam is light in one of the directions and
 * needs no sum of its own: Gauss-Radau sets, which hold their end point (M. Abramowitz and I. Stegun, "Handbook of
 * Mathematical Functions", 25.4.31), over the escape cone below and above the beam.
 */
import { fresnelReflectance } from './fresnel.ts';
import { type Directions, type Quadrature, gaussLegendre } from './quadrature.ts';

export interface BeamDirections extends Directions {
  /** Index of the beam's direction. */
  readonly beam: number;
  /** Index of the normal. */
  readonly eye: number;
  /** Share thrown back at the surface from outside, along the beam. */
  readonly first: number;
}

/** Trapped directions, and escaping ones flatter and steeper than the beam. Twice as many change R by under 2e-5, and that only in the thinnest films. */
const TRAPPED = 10;
const FLATTER = 10;
const STEEPER = 5;

/** Gauss-Radau on 0..1 with `count` nodes, the last at 1; exact for polynomials up to degree 2 count - 2. */
export function gaussRadau(count: number): Quadrature {
  const legendre = (x: number): [number, number] => {
    let [p0, p1] = [1, x];
    for (let k = 2; k <= count; k++) [p0, p1] = [p1, ((2 * k - 1) * x * p1 - (k - 1) * p0) / k];
    return [p0, p1];
  };
  // With the fixed node at -1 the others are the zeros of (P[n-1] + P[n]) / (1 + x); mirrored afterwards.
  const f = (x: number): number => {
    const [p0, p1] = legendre(x);
    return p0 + p1;
  };
  const found: [number, number][] = [[-1, 2 / (count * count)]];
  const cells = 200 * count;
  for (let c = 0; c < cells; c++) {
    // Cells even in angle, as the nodes nearly are.
    let [a, b] = [c, c + 1].map((i) => -Math.cos((Math.PI * (i + 0.5)) / (cells + 1))) as [number, number];
    if (f(a) * f(b) >= 0) continue;
    for (let step = 0; step < 80; step++) {
      const m = (a + b) / 2;
      if (f(a) * f(m) <= 0) b = m;
      else a = m;
    }
    const x = (a + b) / 2;
    found.push([x, (1 - x) / (count * legendre(x)[0]) ** 2]);
  }
  found.reverse();
  return {
    nodes: Float64Array.from(found, ([x]) => (1 - x) / 2),
    weights: Float64Array.from(found, ([, w]) => w / 2),
  };
}

/** Directions inside a film of index `n` (above 1) for a beam of cosine `outside` in air, seen along the normal. */
export function beamDirections(n: number, outside: number): BeamDirections {
  const critical = Math.sqrt(1 - 1 / (n * n));
  const mu: number[] = [];
  const weights: number[] = [];
  const trapped = gaussLegendre(TRAPPED);
  trapped.nodes.forEach((x, i) => {
    mu.push(x * critical);
    weights.push(trapped.weights[i]! * critical);
  });
  const escaping = (count: number, from: number, to: number): void => {
    const { nodes, weights: w } = gaussRadau(count);
    nodes.forEach((node, i) => {
      const x = from + node * (to - from);
      const m = Math.sqrt(1 - (1 - x * x) / (n * n));
      mu.push(m);
      weights.push((w[i]! * (to - from) * x) / (n * n * m));
    });
  };
  escaping(FLATTER, 0, outside);
  const beam = mu.length - 1;
  escaping(STEEPER, outside, 1);
  return {
    mu: Float64Array.from(mu),
    weights: Float64Array.from(weights),
    internal: Float64Array.from(mu, (m) => fresnelReflectance(1 / n, m)),
    beam,
    eye: mu.length - 1,
    first: fresnelReflectance(n, outside),
  };
}
