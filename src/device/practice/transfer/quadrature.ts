/**
 * Directions in which light inside a film is followed, with weights for integrals over mu = cos(angle to the normal).
 * Gauss-Legendre nodes: M. Abramowitz and I. Stegun, "Handbook of Mathematical Functions", 25.4.29 and 25.4.30.
 */
import { fresnelReflectance } from './fresnel.ts';

/** Nodes and weights for an integral over 0..1. */
export interface Quadrature {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/** Gauss-Legendre on 0..1 with `count` nodes, exact for polynomials up to degree 2 count - 1. */
export function gaussLegendre(count: number): Quadrature {
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < 100; step++) {
      let p0 = 1;
      let p1 = x;
      for (let k = 2; k <= count; k++) [p0, p1] = [p1, ((2 * k - 1) * x * p1 - (k - 1) * p0) / k];
      slope = count === 1 ? 1 : (count * (x * p1 - p0)) / (x * x - 1);
      const dx = p1 / slope;
      x -= dx;
      if (Math.abs(dx) < 1e-15) break;
    }
    nodes[count - 1 - i] = (x + 1) / 2;
    weights[count - 1 - i] = 1 / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}

/** Directions inside a film under a boundary. `internal` is the share thrown back inside, `escape` = 1 - internal. */
export interface Directions {
  readonly mu: Float64Array;
  readonly weights: Float64Array;
  readonly internal: Float64Array;
}

/**
 * Directions inside a film of index `n` (1 or more): one Gauss set over the trapped angles, one over the escape
 * cone taken in the outside cosine, where Fresnel's curve has no kink. Weights sum to 1.
 */
export function filmDirections(n: number, trapped: number, escaping: number): Directions {
  const muCritical = Math.sqrt(Math.max(0, 1 - 1 / (n * n)));
  const inside = gaussLegendre(trapped);
  const outside = gaussLegendre(escaping);
  const mu: number[] = [];
  const weights: number[] = [];
  if (muCritical > 0) {
    inside.nodes.forEach((x, i) => {
      mu.push(x * muCritical);
      weights.push(inside.weights[i]! * muCritical);
    });
  }
  outside.nodes.forEach((x, i) => {
    const m = Math.sqrt(1 - (1 - x * x) / (n * n));
    mu.push(m);
    weights.push((outside.weights[i]! * x) / (n * n * m));
  });
  return {
    mu: Float64Array.from(mu),
    weights: Float64Array.from(weights),
    internal: Float64Array.from(mu, (m) => fresnelReflectance(1 / n, m)),
  };
}
