/**
 * Where to start: a coarse net of mixes of every two, three and four tubes, made once per palette and white. The knot
 * nearest a wanted colour is a start from which a descent seldom goes astray, and tells which sets of tubes come near.
 */
import { CHANNELS, mixKernel } from '../kernel.ts';
import { type Watch, heed } from '../problem.ts';
import type { TubeSet } from '../tube-set.ts';

/** A set of tubes (indices into the set, ascending) and its knots in the net. */
export interface NetFamily {
  readonly tubes: readonly number[];
  /** Place of its first knot among all knots, and how many there are. */
  readonly first: number;
  readonly count: number;
  /** Places among the families of those made of some of its tubes. */
  readonly within: readonly number[];
}

export interface MixNet {
  readonly families: readonly NetFamily[];
  /** Four channels a knot. */
  readonly colours: Float64Array;
  /** Effective parts of knot k of a family of m tubes into x[0..m), summing to 1. */
  partsOf(family: NetFamily, knot: number, x: Float64Array): void;
}

/** ln of a part against the first tube's, by how many tubes are mixed. */
const LEVELS: Record<number, readonly number[]> = {
  2: [-4.5, -3.5, -2.5, -1.6, -0.8, 0, 0.8, 1.6, 2.5, 3.5, 4.5],
  3: [-3.6, -1.8, 0, 1.8, 3.6],
  4: [-2.2, 0, 2.2],
};

/** Every choice of `size` out of 0..n-1, ascending. */
export function choices(n: number, size: number): number[][] {
  const out: number[][] = [];
  const pick: number[] = [];
  const go = (from: number): void => {
    if (pick.length === size) {
      out.push([...pick]);
      return;
    }
    for (let i = from; i <= n - (size - pick.length); i++) {
      pick.push(i);
      go(i + 1);
      pick.pop();
    }
  };
  go(0);
  return out;
}

function knotsOf(m: number): number {
  return m === 1 ? 1 : LEVELS[m]!.length ** (m - 1);
}

function partsInto(m: number, knot: number, x: Float64Array): void {
  x[0] = 1;
  let sum = 1;
  let rest = knot;
  const levels = m === 1 ? [] : LEVELS[m]!;
  for (let j = 1; j < m; j++) {
    x[j] = Math.exp(levels[rest % levels.length]!);
    rest = Math.floor(rest / levels.length);
    sum += x[j]!;
  }
  for (let j = 0; j < m; j++) x[j]! /= sum;
}

const nets = new WeakMap<TubeSet, Map<number, MixNet>>();

/** The net of every one to `most` (at most 4) tubes of a set; made once. @throws MixingStopped */
export function mixNet(set: TubeSet, most: number, watch?: Watch): MixNet {
  const size = Math.min(most, 4, set.ids.length);
  const cache = nets.get(set) ?? new Map<number, MixNet>();
  nets.set(set, cache);
  const known = cache.get(size);
  if (known) return known;
  const families: NetFamily[] = [];
  const places = new Map<string, number>();
  let first = 0;
  for (let m = 1; m <= size; m++) {
    for (const tubes of choices(set.ids.length, m)) {
      const within = Array.from({ length: m - 1 }, (_, i) => choices(m, i + 1))
        .flat()
        .map((some) => places.get(some.map((j) => tubes[j]!).join(' '))!);
      places.set(tubes.join(' '), families.length);
      families.push({ tubes, first, count: knotsOf(m), within });
      first += knotsOf(m);
    }
  }
  const colours = new Float64Array(CHANNELS * first);
  const kernel = mixKernel(set);
  const x = new Float64Array(4);
  families.forEach((family, i) => {
    if (i % 64 === 0) heed(watch, i, families.length);
    kernel.choose(family.tubes);
    for (let k = 0; k < family.count; k++) {
      partsInto(family.tubes.length, k, x);
      kernel.colour(x);
      colours.set(kernel.u, CHANNELS * (family.first + k));
    }
  });
  const net: MixNet = {
    families,
    colours,
    partsOf: (family, knot, x) => partsInto(family.tubes.length, knot, x),
  };
  cache.set(size, net);
  return net;
}
