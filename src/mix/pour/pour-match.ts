import type { MixingPalette } from '../../fit/palette.ts';
import { type MatchOptions, matchColour } from '../match/match-colour.ts';
import type { Wanted } from '../match/wanted.ts';
import { type Pour, type PourOptions, pourRecipe } from './pour-recipe.ts';

/** Exact recipes looked at for each one poured: the best to the last digit is often not the best by the spoon. */
const LOOKED_AT = 4;

/**
 * Recipes for a wanted colour as they can be poured, nearest first once poured; equally near ones by fewest tubes.
 * @throws MixProblem as matchColour and pourRecipe do.
 * @throws MixingStopped
 */
export function pourMatch(
  palette: MixingPalette,
  target: Wanted,
  options: MatchOptions & Omit<PourOptions, 'priority' | 'white'>,
): Pour[] {
  const { count = 5, closeEnough = 0.02 } = options;
  const found = matchColour(palette, target, { ...options, count: count * LOOKED_AT });
  const pours = found.recipes.map((r) => pourRecipe(palette, target, r.masses, options));
  const step = (p: Pour): number => Math.floor(p.deltaE00 / closeEnough);
  const size = (p: Pour): number => Object.keys(p.masses).length;
  const seen = new Set<string>();
  return pours
    .toSorted((a, b) => step(a) - step(b) || size(a) - size(b) || a.deltaE00 - b.deltaE00)
    .filter((p) => {
      // Two exact recipes that differ by a tube too little to pour are one once poured.
      const key = Object.keys(p.masses).toSorted().join();
      return !seen.has(key) && seen.add(key);
    })
    .slice(0, count);
}
