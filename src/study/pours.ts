/**
 * A family's recipe as it can be poured: the grams its area needs, on a scale with steps and a smallest pour. Where that
 * is too little to weigh the colour out of, somewhat more is mixed; what still cannot be poured is left out.
 */
import type { Lab } from '../colour/lab.ts';
import type { MixingPalette } from '../fit/palette.ts';
import { type Masses, type Pour, type Priority, type Scale, pourRecipe } from '../mix/index.ts';
import { type CanvasSettings, amountFor } from './amounts.ts';
import { say } from './sentences.ts';

/** Pours nearer to one another than this are as good as each other, CIEDE2000: an interval is usually wider. Our choice. */
export const CLOSE_ENOUGH = 0.5;
/** A pour may be further off than its exact recipe by this before more paint is mixed, CIEDE2000. Our choice. */
const GIVEN_UP = 1;
/** How much more than needed is tried, and the largest pile that is grown to, grams. Our choice. */
const GROWN = [1.5, 2, 3, 5];
const LARGEST_GROWN = 5;

/** A recipe of which there are several to choose from: masses in any unit, and how near the exact one comes. */
export interface ExactRecipe {
  readonly masses: Masses;
  readonly deltaE00: number;
}

export interface FamilyPour {
  readonly pour: Pour;
  /** Grams the family's area needs; the pour may be more. */
  readonly needed: number;
  /** Tubes whose density was assumed. */
  readonly assumedDensity: readonly string[];
}

export interface PourSettings {
  readonly canvas: CanvasSettings;
  /** g/ml by tube id, where known. */
  readonly densities: Readonly<Record<string, number | undefined>>;
  readonly scale: Scale;
  /** @default 'value' */
  readonly priority?: Priority;
}

/**
 * The best pour among several exact recipes, for a share (0..1) of the canvas. No pour of it is under the smallest.
 * @throws RangeError for no recipe, or a canvas or a scale that cannot be.
 */
export function pourFamily(
  palette: MixingPalette,
  { lab, share }: { readonly lab: Lab; readonly share: number },
  recipes: readonly ExactRecipe[],
  settings: PourSettings,
): FamilyPour {
  const { canvas, densities, scale, priority = 'value' } = settings;
  const smallest = scale.smallestPour ?? 10 * scale.resolution;
  const pours = recipes.map((exact) => {
    const amount = amountFor(share, exact.masses, densities, canvas);
    const grams = Math.max(amount.total, smallest);
    const pour = pourRecipe(palette, { lab }, exact.masses, { grams, scale, priority });
    return { exact, amount, grams, pour };
  });
  const [best] = pours.toSorted(
    (p, q) =>
      missed(p.pour, lab, priority) - missed(q.pour, lab, priority) ||
      Object.keys(p.pour.masses).length - Object.keys(q.pour.masses).length ||
      p.pour.deltaE00 - q.pour.deltaE00,
  );
  if (!best) throw new RangeError(say('no-recipe'));
  let { pour } = best;
  for (const grown of GROWN) {
    const grams = best.grams * grown;
    if (pour.deltaE00 <= best.exact.deltaE00 + GIVEN_UP || grams > LARGEST_GROWN) break;
    const larger = pourRecipe(palette, { lab }, best.exact.masses, { grams, scale, priority });
    if (larger.deltaE00 < pour.deltaE00 - CLOSE_ENOUGH) pour = larger;
  }
  return { pour, needed: best.amount.total, assumedDensity: best.amount.assumedDensity };
}

/** How far off, in steps of what does not matter; lightness counts twice where value is held. */
function missed(pour: Pour, lab: Lab, priority: Priority): number {
  const off = priority === 'value' ? Math.abs(pour.prediction.lab.L - lab.L) : 0;
  return Math.floor((pour.deltaE00 + off) / CLOSE_ENOUGH);
}
