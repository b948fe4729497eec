import type { WhiteName } from '../../colour/illuminant.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import { mixKernel } from '../kernel.ts';
import { type Watch, heed } from '../problem.ts';
import { choices } from '../search/net.ts';
import { tubeSet } from '../tube-set.ts';

export interface FacesOptions {
  /** @default 'D65/10deg' */
  readonly white?: WhiteName;
  /** Ids of the tubes. @default all */
  readonly only?: readonly string[];
  /** No edge of a facet is longer, CIELAB units. @default 7 */
  readonly size?: number;
  readonly watch?: Watch;
}

/** Splits of one triangle at most: 2^16 facets. */
const DEEPEST = 16;

type Corner = readonly [one: number, two: number, three: number, L: number, a: number, b: number];

/**
 * Every mix of three tubes, as triangles in CIELAB: nine numbers each, L, a and b of three corners. Each corner is a mix,
 * predicted; where colour bends, facets are small, for an edge that is too long is halved. What four and more tubes mix lies
 * between these sheets (`tests/mix/mix-faces.test.ts` holds it to that), so that together they are what is seen of the
 * reachable colours from outside. Two tubes make a line, one a point: triangles without area.
 * @throws MixProblem for an empty palette or unknown tubes. @throws MixingStopped
 */
export function mixFaces(palette: MixingPalette, options: FacesOptions = {}): Float32Array {
  const { white, only, size = 7, watch } = options;
  const set = tubeSet(palette, { ...(white ? { white } : {}), ...(only ? { only } : {}) });
  const kernel = mixKernel(set);
  const n = set.ids.length;
  const x = new Float64Array(3);
  const out: number[] = [];
  const corner = (one: number, two: number, three: number): Corner => {
    x[0] = one;
    x[1] = two;
    x[2] = three;
    kernel.colour(x);
    return [one, two, three, kernel.u[0]!, kernel.u[1]!, kernel.u[2]!];
  };
  const between = (p: Corner, q: Corner): Corner =>
    corner((p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (p[2] + q[2]) / 2);
  const split = (p: Corner, q: Corner, r: Corner, depth: number): void => {
    const [pq, qr, rp] = [apart(p, q), apart(q, r), apart(r, p)];
    const longest = Math.max(pq, qr, rp);
    if (longest <= size || depth >= DEEPEST) {
      out.push(p[3], p[4], p[5], q[3], q[4], q[5], r[3], r[4], r[5]);
      return;
    }
    const [one, two, opposite] = longest === pq ? [p, q, r] : longest === qr ? [q, r, p] : [r, p, q];
    const middle = between(one, two);
    split(one, middle, opposite, depth + 1);
    split(middle, two, opposite, depth + 1);
  };
  const families = n >= 3 ? choices(n, 3) : [n === 2 ? [0, 1, 1] : [0, 0, 0]];
  families.forEach((family, i) => {
    if (i % 16 === 0) heed(watch, i, families.length);
    kernel.choose(family);
    split(corner(1, 0, 0), corner(0, 1, 0), corner(0, 0, 1), 0);
  });
  return Float32Array.from(out);
}

function apart(p: Corner, q: Corner): number {
  return Math.hypot(p[3] - q[3], p[4] - q[4], p[5] - q[5]);
}
