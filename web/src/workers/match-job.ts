import type { MixingPalette } from '../../../src/fit/palette.ts';
import {
  type AdditionOptions,
  type AdditionResult,
  type MatchOptions,
  MixProblem,
  type Pile,
  type Pour,
  type Recipe,
  type Scale,
  type Wanted,
  addToPile,
  matchColour,
  pourRecipe,
} from '../../../src/mix/index.ts';

/** Differences smaller than this do not decide the order of recipes, CIEDE2000: an interval is usually wider. Our choice. */
const CLOSE_ENOUGH = 0.5;

type Progress = (share: number) => void;

export interface MatchAsk {
  readonly wanted: Wanted;
  readonly options: Omit<MatchOptions, 'watch'> & { readonly grams: number };
  readonly scale: Scale;
}

/** A recipe, and how it can be poured on the scale; without a pour where the scale is too coarse for the amount. */
export interface FoundRecipe {
  readonly recipe: Recipe;
  readonly pour: Pour | undefined;
}
export interface MatchAnswer {
  readonly found: readonly FoundRecipe[];
  readonly reached: boolean;
}

export function matchJob(palette: MixingPalette, ask: MatchAsk, progress: Progress): MatchAnswer {
  const { wanted, options, scale } = ask;
  const { recipes, reached } = matchColour(palette, wanted, {
    closeEnough: CLOSE_ENOUGH,
    ...options,
    watch: { onProgress: (done, of) => progress(done / of) },
  });
  const { grams, priority } = options;
  const pourOptions = { grams, scale, ...(priority ? { priority } : {}) };
  const found = recipes.map((recipe) => ({ recipe, pour: poured(palette, wanted, recipe, pourOptions) }));
  return { reached, found: worthShowing(found) };
}

const tubesOf = ({ recipe, pour }: FoundRecipe): number => Object.keys((pour ?? recipe).masses).length;

/** A recipe further off than the best by this is another colour, not another way, CIEDE2000. Our choice. */
const ANOTHER_COLOUR = 5;

/** Without what is another colour, and without recipes that the scale makes the same. */
function worthShowing(found: readonly FoundRecipe[]): FoundRecipe[] {
  const difference = ({ recipe, pour }: FoundRecipe): number => (pour ?? recipe).deltaE00;
  const best = Math.min(...found.map(difference));
  const seen = new Set<string>();
  return found
    .filter((f) => {
      const key = JSON.stringify(
        Object.entries((f.pour ?? f.recipe).masses).toSorted(([p], [q]) => (p < q ? -1 : 1)),
      );
      if (seen.has(key) || difference(f) > best + ANOTHER_COLOUR) return false;
      seen.add(key);
      return true;
    })
    .toSorted(
      (p, q) =>
        Math.floor(difference(p) / CLOSE_ENOUGH) - Math.floor(difference(q) / CLOSE_ENOUGH) ||
        tubesOf(p) - tubesOf(q),
    );
}

function poured(
  palette: MixingPalette,
  wanted: Wanted,
  recipe: Recipe,
  options: Parameters<typeof pourRecipe>[3],
): Pour | undefined {
  try {
    return pourRecipe(palette, wanted, recipe.masses, options);
  } catch (cause) {
    // Too little paint for this scale: the recipe itself still stands.
    if (cause instanceof MixProblem) return undefined;
    throw cause;
  }
}

export interface AdditionAsk {
  readonly pile: Pile;
  readonly wanted: Wanted;
  readonly options: Omit<AdditionOptions, 'watch'>;
}
export type AdditionAnswer = AdditionResult;

export function additionJob(
  palette: MixingPalette,
  { pile, wanted, options }: AdditionAsk,
  progress: Progress,
): AdditionAnswer {
  return addToPile(palette, pile, wanted, {
    ...options,
    watch: { onProgress: (done, of) => progress(done / of) },
  });
}
