import type { Masses } from '../film-stack.ts';
import { mixKernel } from '../kernel.ts';
import { type TubeSet, tubeIndex } from '../tube-set.ts';

/** One thing to do at the slab. */
export interface PourStep {
  readonly tube: string;
  readonly grams: number;
  /** `start`: the pile to begin with. `add`: all at once. `in small steps`: a strong tube, a little at a time. */
  readonly how: 'start' | 'add' | 'in small steps';
}

/** A tube this many times stronger than the pile's first is added a little at a time. Common practice, no source. */
const STRONG = 4;

/**
 * Dark into light: start with the lightest tube that makes up a good part of the mix, then from the weakest to the
 * strongest, for a strong colour can always be added to and never taken out. Common practice among painters, no source.
 */
export function orderOfAddition(set: TubeSet, masses: Masses): PourStep[] {
  const kernel = mixKernel(set);
  const total = Object.values(masses).reduce((a, b) => a + b, 0);
  const parts = Object.entries(masses)
    .filter(([, grams]) => grams > 0)
    .map(([tube, grams]) => {
      const i = tubeIndex(set, tube);
      kernel.choose([i]);
      kernel.colour(Float64Array.of(1));
      return { tube, grams, strength: set.strength[i]!, L: kernel.u[0]! };
    });
  if (parts.length === 0) return [];
  const bulky = parts.filter((p) => p.grams >= total / (2 * parts.length));
  const first = bulky.reduce((a, b) => (b.L > a.L ? b : a));
  const rest = parts
    .filter((p) => p !== first)
    .toSorted((a, b) => a.strength - b.strength || (a.tube < b.tube ? -1 : 1));
  return [
    { tube: first.tube, grams: first.grams, how: 'start' },
    ...rest.map(({ tube, grams, strength }) => ({
      tube,
      grams,
      how: strength >= STRONG * first.strength ? ('in small steps' as const) : ('add' as const),
    })),
  ];
}
