import { ciede2000Steps } from '../../colour/ciede2000.ts';
import type { MixKernel } from '../kernel.ts';

/** A slip of the knife, whichever is more: this share of a pour, or this many grams. */
export const SLIP = { share: 0.05, grams: 0.02 } as const;

/** How far a mix moves when one pour slips. */
export interface Forgiveness {
  /** CIEDE2000 of the worst single slip. */
  readonly deltaE00: number;
  /** Place of that tube among those of the recipe. */
  readonly worst: number;
}

/**
 * The worst single slip, too much or too little, in a recipe of `grams[j]` of the kernel's chosen tubes.
 * `strength[j]` turns grams into effective parts.
 */
export function forgiveness(
  kernel: MixKernel,
  grams: readonly number[],
  strength: readonly number[],
): Forgiveness {
  const x = Float64Array.from(grams, (g, j) => g * strength[j]!);
  kernel.colour(x);
  const [L, a, b] = [kernel.u[0]!, kernel.u[1]!, kernel.u[2]!];
  let deltaE00 = 0;
  let worst = 0;
  if (grams.length === 1) return { deltaE00, worst };
  grams.forEach((g, j) => {
    const slip = Math.max(SLIP.share * g, SLIP.grams) * strength[j]!;
    const exact = x[j]!;
    for (const off of [exact + slip, Math.max(0, exact - slip)]) {
      x[j] = off;
      kernel.colour(x);
      const d = ciede2000Steps({ L, a, b }, { L: kernel.u[0]!, a: kernel.u[1]!, b: kernel.u[2]! }).dE00;
      if (d > deltaE00) {
        deltaE00 = d;
        worst = j;
      }
    }
    x[j] = exact;
  });
  return { deltaE00, worst };
}
