import type { MixingPalette } from '../../fit/palette.ts';
import { type MatchOptions, type MatchResult, matchColour } from '../match/match-colour.ts';
import { type Rankable, rank, withoutDisguises } from '../match/rank.ts';
import type { Recipe } from '../match/recipe.ts';
import type { Priority, Wanted } from '../match/wanted.ts';
import { metamerism } from '../metamerism.ts';
import { VALUE_KEPT } from '../match/difference.ts';
import type { PreTintPlan } from './pre-tint.ts';
import { type Pour, type PourOptions, pourRecipe } from './pour-recipe.ts';

/** Exact recipes looked at for each one poured: the best to the last digit is often not the best by the spoon. */
const LOOKED_AT = 4;
/** A recipe, how it is poured, and how near it comes when it is made the way that is advised. */
export interface PouredRecipe {
  /** The exact recipe that was poured. */
  readonly recipe: Recipe;
  readonly pour: Pour;
  /** CIEDE2000 from the wanted colour as made: of the pre-tinted recipe where that is worth the errand, else of the pour. */
  readonly deltaE00: number;
  /** How it comes that near. */
  readonly made: 'as poured' | 'with a pre-tint';
}

export interface PourMatchResult extends Pick<MatchResult, 'reached' | 'sentence'> {
  /** Best first. */
  readonly recipes: readonly PouredRecipe[];
}

/** A pour as it is made: with its pre-tints where it has any, else as poured. */
export function asMade(pour: Pour): Pour | PreTintPlan {
  return pour.preTint ?? pour;
}

/**
 * Recipes for a wanted colour as they can be poured, ranked as `matchColour` ranks, but by what comes out of the scale:
 * nearness as made (with a pre-tint where one is worth it), then fewest tubes, least metamerism, how forgiving, price.
 * No two are the same recipe in disguise once poured. `reached` and `sentence` speak of the exact recipes.
 * @throws MixProblem as matchColour and pourRecipe do.
 * @throws MixingStopped
 */
export function pourMatch(
  palette: MixingPalette,
  target: Wanted,
  options: MatchOptions & Omit<PourOptions, 'priority' | 'white'>,
): PourMatchResult {
  const { count = 5, closeEnough = 0.02, priority } = options;
  const found = matchColour(palette, target, { ...options, count: Math.min(100, count * LOOKED_AT) });
  const rankable = found.recipes.map((recipe) => {
    const pour = pourRecipe(palette, target, recipe.masses, options);
    return weigh(target, priority, recipe, pour);
  });
  const recipes = withoutDisguises(rank(rankable, closeEnough), closeEnough)
    .filter(distinct())
    .slice(0, count)
    .map(({ poured }) => poured);
  return { recipes, reached: found.reached, sentence: found.sentence };
}

function weigh(
  target: Wanted,
  priority: Priority | undefined,
  recipe: Recipe,
  pour: Pour,
): Rankable & { readonly poured: PouredRecipe } {
  const { preTint } = pour;
  const { split, prediction, deltaE00, masses } = asMade(pour);
  const ids = [...Object.keys(masses), ...(preTint?.tints ?? []).flatMap((t) => [t.strong, t.light])];
  return {
    ids: [...new Set(ids)].toSorted(),
    // A value that a spoon can hold is held; ten of L* to one of value is near enough for the rest.
    heldError: priority === 'value' ? 10 * Math.max(0, Math.abs(split.value) - VALUE_KEPT) : 0,
    deltaE00,
    metamerism:
      'spectrum' in target
        ? Math.max(
            ...metamerism(target.spectrum, prediction.reflectance, prediction.lab.white).map(
              (m) => m.deltaE00,
            ),
          )
        : 0,
    slip: recipe.slip.deltaE00,
    price: recipe.price,
    leastNeeded: Infinity,
    poured: { recipe, pour, deltaE00, made: preTint ? 'with a pre-tint' : 'as poured' },
  };
}

/** Two exact recipes that differ by a tube too little to pour are one once poured. */
function distinct(): (r: Rankable) => boolean {
  const seen = new Set<string>();
  return ({ ids }) => {
    const key = JSON.stringify(ids);
    return !seen.has(key) && seen.add(key) !== undefined;
  };
}
