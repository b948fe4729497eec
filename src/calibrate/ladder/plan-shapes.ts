/** What a weighing plan is asked and what it answers. All masses in grams. */

export type PlanMethod = 'straight' | 'serial' | 'least paint';

export interface PlanRequest {
  /** Smallest step of the scale. */
  readonly scaleResolution: number;
  /** Smallest amount of anything worth pouring. */
  readonly smallestPour: number;
  /** Paint left for each rung's drawdown. */
  readonly perRung: number;
  /** Wanted standard deviation of each ln(paint/white); 0.01 is 1 %. */
  readonly wantedSigma?: number;
  readonly method: PlanMethod;
  /** Parts of white to one of paint, 0 for the masstone; any order, no two alike. */
  readonly whiteParts: readonly number[];
}

/** The wanted ratio error where none is named: 1 % costs at most 0.13 CIEDE2000 in a tint (made paints). */
export const DEFAULT_WANTED_SIGMA = 0.01;

/** One thing to weigh: from a tube, or from a rung already mixed. */
export type PlannedPour =
  | { readonly kind: 'paint'; readonly grams: number }
  | { readonly kind: 'white'; readonly grams: number }
  | { readonly kind: 'rung'; readonly rung: string; readonly grams: number };

export interface PlannedRung {
  /** "masstone", "1:1", "1:4", ... */
  readonly name: string;
  readonly whiteParts: number;
  /** In the order of weighing. */
  readonly pours: readonly PlannedPour[];
  /** What the pile weighs when mixed. */
  readonly totalGrams: number;
  /** What is left of it for the drawdown, when other rungs have taken theirs. */
  readonly leftGrams: number;
  /** Share of the tube by mass, as poured. */
  readonly share: number;
  /** Standard deviation of ln(paint/white); 0 for the masstone. */
  readonly ratioSigma: number;
  /** Standard deviation of ln(share). */
  readonly shareRelativeSigma: number;
}

export interface WeighingPlan {
  /** How it was made in the end: a plan for least paint is one of the two, or both mixed. */
  readonly method: 'straight' | 'serial' | 'mixed';
  readonly scaleResolution: number;
  readonly smallestPour: number;
  readonly wantedSigma: number;
  /** In an order in which they can be mixed: masstone first, then more and more white. */
  readonly rungs: readonly PlannedRung[];
  readonly tubeGrams: number;
  readonly whiteGrams: number;
  readonly worstRelativeSigma: number;
  readonly sentences: readonly string[];
}
