import { GRID_SIZE } from '../../colour/grid.ts';
import { valueOfReflectance } from '../../colour/value-of-reflectance.ts';
import { extraWhite, sumsAt } from '../crowding.ts';
import type { Masses } from '../film-stack.ts';
import { type Metamerism, metamerism } from '../metamerism.ts';
import { type MixPrediction, predictMix } from '../predict-mix.ts';
import type { TubeSet } from '../tube-set.ts';
import { type ColourSplit, splitDifference } from './difference.ts';
import type { WantedColour } from './wanted.ts';

/** What to mix for a wanted colour, and what is known about it. */
export interface Recipe {
  /** Grams by tube id, summing to the amount asked for. No tube with nothing. */
  readonly masses: Masses;
  /** The same as shares of the whole by mass. */
  readonly shares: Masses;
  readonly prediction: MixPrediction;
  /** Mix against wanted, under the wanted colour's white. */
  readonly deltaE00: number;
  readonly split: ColourSplit;
  /** The worst slip of one pour (5 % or 0.02 g, whichever is more), CIEDE2000, and whose. */
  readonly slip: { readonly deltaE00: number; readonly tube: string };
  /** Grams times price, where prices were given. */
  readonly price: number;
  /** Only where the target is a spectrum. */
  readonly metamerism?: readonly Metamerism[];
}

/** Reflectance of effective parts of tubes of a set, as the geometry reads it. */
export function reflectanceOfParts(
  set: TubeSet,
  tubes: readonly number[],
  x: ArrayLike<number>,
): Float64Array {
  const { floor, gain, k2 } = set.surface;
  const extra = extraWhite(set, tubes, x);
  return Float64Array.from({ length: GRID_SIZE }, (_, i) => {
    const { K, S } = sumsAt(set, tubes, x, i, extra);
    return floor + (gain * S) / (K + (1 - k2) * S + Math.sqrt(K * (K + 2 * S)));
  });
}

/** Effective parts as grams that sum to `amount`. */
export function gramsOf(
  set: TubeSet,
  tubes: readonly number[],
  parts: ArrayLike<number>,
  amount: number,
): number[] {
  const masses = tubes.map((tube, j) => parts[j]! / set.strength[tube]!);
  const total = masses.reduce((a, b) => a + b, 0);
  return masses.map((m) => (m / total) * amount);
}

/** Spells a recipe out, with its prediction and interval. */
export function recipeOf(
  set: TubeSet,
  wanted: WantedColour,
  masses: Masses,
  about: { readonly slip: Recipe['slip']; readonly price: number },
): Recipe {
  const total = Object.values(masses).reduce((a, b) => a + b, 0);
  const prediction = predictMix(set.palette, masses, set.white);
  const valueStep =
    wanted.spectrum === undefined ? undefined : prediction.value - valueOfReflectance(wanted.spectrum);
  const split = splitDifference(wanted.lab, prediction.lab, valueStep);
  return {
    masses,
    shares: Object.fromEntries(Object.entries(masses).map(([id, g]) => [id, g / total])),
    prediction,
    deltaE00: split.deltaE00,
    split,
    ...about,
    ...(wanted.spectrum
      ? { metamerism: metamerism(wanted.spectrum, prediction.reflectance, set.white) }
      : {}),
  };
}
