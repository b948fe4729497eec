import { ladderRatios, lnRatiosOf } from '../../src/calibrate/ladder/ratios.ts';
import type { PlannedPart } from './open-ladder.ts';

export interface RungToCompose {
  readonly id: string;
  readonly parts: readonly PlannedPart[];
  /** As weighed, else as planned. */
  readonly grams: readonly number[];
}

export interface Composition {
  /** Mass share per tube id. */
  readonly shares: Readonly<Record<string, number>>;
  /** Share of the ladder's own tube, and its relative standard deviation from the scale. */
  readonly share: number;
  readonly relativeSigma: number;
}

/** What each rung holds by its parts, through dilutions, with the doubt the scale leaves (calibrate's own sums). */
export function composeRungs(
  rungs: readonly RungToCompose[],
  tubeId: string,
  whiteId: string,
  scaleResolution: number,
): Map<string, Composition> {
  const ratios = ladderRatios(
    rungs.map((rung) => ({
      id: rung.id,
      made: rung.parts.map((part, i) =>
        part.tubeId === null
          ? { from: part.fromSwatchId!, grams: rung.grams[i]! }
          : { tube: part.tubeId, grams: rung.grams[i]! },
      ),
    })),
    { resolution: scaleResolution },
  );
  const { ids, covariance } = lnRatiosOf(ratios, tubeId, whiteId);
  const sigma = new Map(ids.map((id, i) => [id, Math.sqrt(covariance[i]![i]!)]));
  return new Map(
    ratios.swatches.map(({ id, shares }) => {
      const share = shares.get(tubeId) ?? 0;
      // share = r / (1 + r): d ln share = (1 - share) d ln r.
      return [
        id,
        { shares: Object.fromEntries(shares), share, relativeSigma: (1 - share) * (sigma.get(id) ?? 0) },
      ];
    }),
  );
}
