/**
 * A recipe for each family from a palette, and what was kept where the palette cannot reach: value first, because a
 * study that holds its values holds together whatever its hues do.
 */
import type { MixingPalette } from '../fit/palette.ts';
import { type MatchOptions, REACHED_DELTA_E00, type Recipe, matchColour } from '../mix/index.ts';
import type { Family } from './families.ts';
import { CLOSE_ENOUGH } from './pours.ts';

/** Exact recipes kept for each family. */
const KEPT = 4;

export interface FamilyRecipe {
  /** The best recipe; its prediction and split are under the picture's white (D65/2deg). */
  readonly recipe: Recipe;
  /** All that were found, best first: which is best once poured depends on the amount and the scale. */
  readonly choice: readonly Recipe[];
  /** False where no mix of these tubes comes near; `recipe.split` then says what was given up. */
  readonly reached: boolean;
}

export type StudyOptions = Pick<
  MatchOptions,
  'maxTubes' | 'priority' | 'only' | 'without' | 'grams' | 'watch'
>;

/**
 * One recipe per family, in their order. Value is held unless another priority is asked for.
 * @throws MixProblem for an empty palette or unknown tubes; MixingStopped when told to stop.
 */
export function recipesFor(
  palette: MixingPalette,
  families: readonly Pick<Family, 'lab'>[],
  options: StudyOptions = {},
): FamilyRecipe[] {
  const { watch, ...rest } = options;
  return families.map(({ lab }, i) => {
    const stop = watch?.shouldStop;
    const result = matchColour(
      palette,
      { lab },
      {
        priority: 'value',
        closeEnough: CLOSE_ENOUGH,
        ...rest,
        count: KEPT,
        watch: {
          ...(stop ? { shouldStop: stop } : {}),
          onProgress: (done, of) => watch?.onProgress?.(i + done / of, families.length),
        },
      },
    );
    return {
      recipe: result.recipes[0]!,
      choice: result.recipes,
      reached: result.recipes.some((r) => r.deltaE00 < REACHED_DELTA_E00),
    };
  });
}
