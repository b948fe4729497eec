import { GRID_SIZE } from '../colour/grid.ts';
import type { Masses } from './film-stack.ts';
import { effectiveParts, type TubeSet } from './tube-set.ts';

/** A made mix that takes part in a search as one tube: a pile on the slab, a pre-tint. */
export interface Blend {
  readonly id: string;
  readonly masses: Masses;
  /** Factor on its absorption at each wavelength, where a reading of it says more than its masses. @default 1 */
  readonly absorption?: ArrayLike<number>;
}

/** The set with blends after its tubes; a unit of mass of a blend is a unit of mass of what it is made of. */
export function withBlends<W extends TubeSet>(set: W, blends: readonly Blend[]): TubeSet<W['white']> {
  const n = set.ids.length;
  const K = new Float64Array((n + blends.length) * GRID_SIZE);
  const S = new Float64Array(K.length);
  const strength = new Float64Array(n + blends.length);
  K.set(set.K);
  S.set(set.S);
  strength.set(set.strength);
  blends.forEach(({ masses, absorption }, b) => {
    const x = effectiveParts(set, masses);
    const total = Object.values(masses).reduce((sum, g) => sum + g, 0);
    const at = (n + b) * GRID_SIZE;
    let effective = 0;
    for (let t = 0; t < n; t++) {
      effective += x[t]!;
      for (let i = 0; i < GRID_SIZE; i++) {
        K[at + i]! += x[t]! * set.K[t * GRID_SIZE + i]! * (absorption?.[i] ?? 1);
        S[at + i]! += x[t]! * set.S[t * GRID_SIZE + i]!;
      }
    }
    strength[n + b] = effective / total;
    for (let i = 0; i < GRID_SIZE; i++) {
      K[at + i]! /= effective;
      S[at + i]! /= effective;
    }
  });
  const { crowding } = set;
  const whiteShare = blends.map(({ masses }) => {
    const total = Object.values(masses).reduce((sum, g) => sum + g, 0);
    return (masses[set.palette.white] ?? 0) / total;
  });
  const crowded = crowding
    ? { crowding: { ...crowding, whiteShare: Float64Array.from([...crowding.whiteShare, ...whiteShare]) } }
    : {};
  return { ...set, ...crowded, ids: [...set.ids, ...blends.map((b) => b.id)], K, S, strength };
}

/** Masses of a recipe that holds blends, in the tubes they are made of. */
export function unblended(masses: Masses, blends: readonly Blend[]): Record<string, number> {
  const out: Record<string, number> = {};
  const add = (id: string, grams: number): void => void (out[id] = (out[id] ?? 0) + grams);
  for (const [id, grams] of Object.entries(masses)) {
    const blend = blends.find((b) => b.id === id);
    if (!blend) add(id, grams);
    else {
      const total = Object.values(blend.masses).reduce((sum, g) => sum + g, 0);
      for (const [part, g] of Object.entries(blend.masses)) if (g > 0) add(part, (grams * g) / total);
    }
  }
  return out;
}
