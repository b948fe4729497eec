/**
 * Proportions of weighed swatches and how their errors hang together. Every weighing is one independent error; a
 * pile made from another inherits the other's errors, so rungs made by serial dilution err together
 * (swatch-set/piles.ts). First-order propagation (JCGM 100:2008, 5.1.2).
 */
import { ASSUMED_WEIGHING, pilesOf, sharesOfPile, weighingErrorOfResolution } from '../swatch-set/piles.ts';
import type { Swatch, Weighing } from '../swatch-set/schema.ts';

/** Standard deviation of ln(paint/white) for one straight pour. Grams. */
export function straightRatioSigma(paint: number, white: number, resolutionGrams: number): number {
  return weighingErrorOfResolution(resolutionGrams) * Math.hypot(1 / paint, 1 / white);
}

export interface WeighedSwatch {
  readonly id: string;
  /** Share by mass per tube id, sum 1. Tubes that are not in it are left out. */
  readonly shares: ReadonlyMap<string, number>;
  /** d ln share per independent weighing error (standard normal), per tube id. */
  readonly slopes: ReadonlyMap<string, Float64Array>;
}

export interface LadderRatios {
  readonly swatches: readonly WeighedSwatch[];
  /** Number of independent errors. */
  readonly errorCount: number;
  /** The weighing was not stated; `ASSUMED_WEIGHING` was taken. */
  readonly assumed: boolean;
}

type Painted = Pick<Swatch, 'id'> & {
  readonly masses?: Swatch['masses'];
  readonly made?: Swatch['made'];
};

/**
 * Shares and error slopes of swatches given by `masses` or `made`, in the order given. A pile may be made from one
 * that stands later in the list.
 * @throws SwatchSetProblem naming the swatch: made from an unknown one, in a circle, or without any paint
 */
export function ladderRatios(swatches: readonly Painted[], weighing: Weighing | undefined): LadderRatios {
  const tubeIds = new Set<string>();
  for (const { masses, made } of swatches) {
    Object.keys(masses ?? {}).forEach((id) => tubeIds.add(id));
    made?.forEach((part) => 'tube' in part && tubeIds.add(part.tube));
  }
  const piles = pilesOf(
    {
      tubes: [...tubeIds].map((id) => ({ id })),
      swatches: [],
      checks: swatches.map((s) => ({ ...s, film: 'opaque' as const })),
    },
    weighing ?? ASSUMED_WEIGHING,
  );
  const asWeighed = new Float64Array(piles.errorCount);
  return {
    errorCount: piles.errorCount,
    assumed: weighing === undefined,
    swatches: swatches.map(({ id }) => {
      const index = piles.pileOf.get(id)!;
      const pile = piles.piles[index]!;
      const { shares, slopes } = sharesOfPile(piles, index, asWeighed);
      const slopeOf = (tube: number): Float64Array => {
        const row = new Float64Array(piles.errorCount);
        slopes.forEach((slope, k) => (row[pile.errors[k]!] = slope[tube]! / shares[tube]!));
        return row;
      };
      return {
        id,
        shares: new Map(pile.tubes.map((t) => [piles.tubeIds[t]!, shares[t]!])),
        slopes: new Map(pile.tubes.map((t) => [piles.tubeIds[t]!, slopeOf(t)])),
      };
    }),
  };
}

/** ln(paint/white) of each swatch that holds both, with the covariance of their errors. */
export interface LnRatios {
  readonly ids: readonly string[];
  readonly lnRatio: Float64Array;
  /** Symmetric, one row per id. */
  readonly covariance: Float64Array[];
}

export function lnRatiosOf(ratios: LadderRatios, paint: string, white: string): LnRatios {
  const both = ratios.swatches.filter((s) => s.shares.has(paint) && s.shares.has(white));
  const factors = both.map((s) => {
    const [p, w] = [s.slopes.get(paint)!, s.slopes.get(white)!];
    return p.map((v, k) => v - w[k]!);
  });
  return {
    ids: both.map((s) => s.id),
    lnRatio: Float64Array.from(both, (s) => Math.log(s.shares.get(paint)! / s.shares.get(white)!)),
    covariance: factors.map((f) =>
      Float64Array.from(factors, (g) => f.reduce((sum, v, k) => sum + v * g[k]!, 0)),
    ),
  };
}
