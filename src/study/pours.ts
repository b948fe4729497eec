/**
 * A family's recipe as it can be poured: the grams its area needs, on a scale with steps and a smallest pour. Where that
 * is too little to weigh the colour out of, strong tubes are let down first, or somewhat more is mixed; what still cannot
 * be poured is left out.
 */
import type { Lab } from '../colour/lab.ts';
import type { MixingPalette } from '../fit/palette.ts';
import { type Masses, type Pour, type Priority, type Scale, asMade, pourRecipe } from '../mix/index.ts';
import { type CanvasSettings, amountFor } from './amounts.ts';
import { say } from './sentences.ts';

/** Pours nearer to one another than this are as good as each other, CIEDE2000: an interval is usually wider. Our choice. */
export const CLOSE_ENOUGH = 0.5;
/** A pour may be further off than its exact recipe by this before more paint is mixed, CIEDE2000. Our choice. */
const GIVEN_UP = 1;
/** How much more than needed is tried, and the largest pile that is grown to, grams. Our choice. */
const GROWN = [1.5, 2, 3, 5];
const LARGEST_GROWN = 5;
/** Up to so much more paint is less trouble than a pre-tint. Our choice. */
const EASILY_GROWN = 2;

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
 * The best pour among several exact recipes, for a share (0..1) of the canvas, each judged as it is made: with its
 * pre-tints where it has any. No pour of it is under the smallest.
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
      asMade(p.pour).deltaE00 - asMade(q.pour).deltaE00,
  );
  if (!best) throw new RangeError(say('no-recipe'));
  const pour = poured(best, (grams) =>
    pourRecipe(palette, { lab }, best.exact.masses, { grams, scale, priority }),
  );
  return { pour, needed: best.amount.total, assumedDensity: best.amount.assumedDensity };
}

/**
 * The least trouble that comes near enough: as needed, somewhat more, pre-tints, much more; else the nearest of them all.
 */
function poured(
  best: { readonly exact: ExactRecipe; readonly grams: number; readonly pour: Pour },
  ofGrams: (grams: number) => Pour,
): Pour {
  const enough = (deltaE00: number): boolean => deltaE00 <= best.exact.deltaE00 + GIVEN_UP;
  let nearest = best.pour;
  if (enough(best.pour.deltaE00)) return withoutErrand(best.pour);
  for (const grown of GROWN) {
    const errand = grown > EASILY_GROWN && best.pour.preTint;
    if (errand && enough(errand.deltaE00)) return best.pour;
    if (best.grams * grown > LARGEST_GROWN) break;
    const larger = ofGrams(best.grams * grown);
    if (enough(larger.deltaE00)) return withoutErrand(larger);
    if (asMade(larger).deltaE00 < asMade(nearest).deltaE00 - CLOSE_ENOUGH) nearest = larger;
  }
  return nearest;
}

/** A pour near enough without its pre-tints. */
function withoutErrand({ preTint: _errand, ...pour }: Pour): Pour {
  return pour;
}

/** How far off, in steps of what does not matter; lightness counts twice where value is held. */
function missed(pour: Pour, lab: Lab, priority: Priority): number {
  const { prediction, deltaE00 } = asMade(pour);
  const off = priority === 'value' ? Math.abs(prediction.lab.L - lab.L) : 0;
  return Math.floor((deltaE00 + off) / CLOSE_ENOUGH);
}
