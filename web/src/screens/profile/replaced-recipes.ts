/** Recipes before and after a tube was replaced, those that change most first. */
import type { Answer } from '../../api/call.ts';

export type ReplacedRecipe = Answer<'replaceTube'>['recipes'][number];
type Masses = Readonly<Record<string, number>>;

/** A recipe moves when a tube's part in it moves by more than a careless pour would: common practice, no source. */
const MOVES = 0.02;
/** Shown at first; the rest is folded. */
const AT_FIRST = 6;

const total = (masses: Masses): number => Object.values(masses).reduce((sum, g) => sum + g, 0);

/**
 * The greatest change of any tube's grams, as a share (0..1 and more) of the whole recipe before.
 * @param old id of the tube that went, @param now id of the one in its place (may be the same)
 */
export function changeOf({ before, masses }: ReplacedRecipe, old: string, now: string): number {
  const moved = Object.fromEntries(Object.entries(before).map(([id, g]) => [id === old ? now : id, g]));
  const ids = new Set([...Object.keys(moved), ...Object.keys(masses)]);
  const most = Math.max(0, ...[...ids].map((id) => Math.abs((masses[id] ?? 0) - (moved[id] ?? 0))));
  return most / Math.max(1e-9, total(before));
}

export interface RecipesInOrder {
  /** To be looked at: out of reach, or moving most. */
  readonly first: readonly ReplacedRecipe[];
  readonly rest: readonly ReplacedRecipe[];
  readonly lost: number;
  readonly moving: number;
  readonly same: number;
}

/** Out of reach before what moves, and what moves most before what hardly does. */
export function recipesInOrder(recipes: readonly ReplacedRecipe[], old: string, now: string): RecipesInOrder {
  const judged = recipes
    .map((recipe) => ({
      recipe,
      lost: recipe.outcome === 'out of reach',
      change: changeOf(recipe, old, now),
    }))
    .toSorted((a, b) => Number(b.lost) - Number(a.lost) || b.change - a.change);
  const lost = judged.filter((j) => j.lost).length;
  const moving = judged.filter((j) => !j.lost && j.change > MOVES).length;
  const shown = Math.min(lost + moving, Math.max(AT_FIRST, lost));
  return {
    first: judged.slice(0, shown).map((j) => j.recipe),
    rest: judged.slice(shown).map((j) => j.recipe),
    lost,
    moving,
    same: judged.length - lost - moving,
  };
}
