import type { MixingPalette } from '../../../src/fit/palette.ts';
import {
  type AdditionOptions,
  type AdditionResult,
  type MatchOptions,
  type Pile,
  type Pour,
  type PouredRecipe,
  type Recipe,
  type Scale,
  type Wanted,
  addToPile,
  canPour,
  matchColour,
  pourMatch,
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
  /** CIEDE2000 as it is made, and how. */
  readonly deltaE00: number;
  readonly made: PouredRecipe['made'];
}
export interface MatchAnswer {
  readonly found: readonly FoundRecipe[];
  readonly reached: boolean;
}

export function matchJob(palette: MixingPalette, ask: MatchAsk, progress: Progress): MatchAnswer {
  const { wanted, scale } = ask;
  const options = {
    closeEnough: CLOSE_ENOUGH,
    ...ask.options,
    watch: { onProgress: (done: number, of: number) => progress(done / of) },
  };
  if (!canPour(options.grams, scale)) {
    // Too little paint for this scale: the exact recipes still stand.
    const { recipes, reached } = matchColour(palette, wanted, options);
    return {
      reached,
      found: sameColour(
        recipes.map((recipe) => ({
          recipe,
          pour: undefined,
          deltaE00: recipe.deltaE00,
          made: 'as poured' as const,
        })),
      ),
    };
  }
  const { recipes, reached } = pourMatch(palette, wanted, { ...options, scale });
  return { reached, found: sameColour(recipes) };
}

/** A recipe further off than the best by this is another colour, not another way, CIEDE2000. Our choice. */
const ANOTHER_COLOUR = 2;

function sameColour(found: readonly FoundRecipe[]): FoundRecipe[] {
  const best = Math.min(...found.map((f) => f.deltaE00));
  return found.filter((f) => f.deltaE00 <= best + ANOTHER_COLOUR);
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
