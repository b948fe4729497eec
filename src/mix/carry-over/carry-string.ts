import type { MixingPalette } from '../../fit/palette.ts';
import type { Masses } from '../film-stack.ts';
import type { ValueString } from '../value-string/value-string.ts';
import { type CarriedRecipe, type CarryOptions, type Replacements, carryRecipe } from './carry-recipe.ts';
import { say } from '../sentences.ts';

export interface CarriedString {
  /** In the order of the string; undefined where the old tubes had no mix for a step either. */
  readonly steps: readonly (CarriedRecipe | undefined)[];
  /** What could not be kept, in words; empty when all is well. */
  readonly warnings: readonly string[];
}

/** A value string's own promise is its value: a step off by more than this is said, Munsell value. */
const VALUE_SAID = 0.05;

/**
 * Carries a value string over, step by step, value first.
 * @throws MixProblem as `carryRecipe` does.
 */
export function carryValueString(
  palette: MixingPalette,
  string: Pick<ValueString, 'steps'> | readonly Masses[],
  replacements: Replacements,
  options: CarryOptions = {},
): CarriedString {
  const recipes = 'steps' in string ? string.steps.map((s) => s.masses) : string;
  const steps = recipes.map((masses) =>
    masses === undefined
      ? undefined
      : carryRecipe(palette, masses, replacements, { priority: 'value', ...options }),
  );
  const warnings: string[] = [];
  const values = steps.filter((s) => s && Math.abs(s.split.value) > VALUE_SAID);
  if (values.length > 0) {
    const list = values.map((s) => (s!.prediction.value - s!.split.value).toFixed(2)).join(', ');
    warnings.push(say('values-lost', { list }));
  }
  const coloured = steps.filter((s) => s && s.outcome === 'out of reach' && !values.includes(s));
  if (coloured.length > 0) {
    const worst = Math.max(...coloured.map((s) => s!.deltaE00));
    warnings.push(say('steps-off', { some: coloured.length, of: steps.length, most: worst.toFixed(1) }));
  }
  return { steps, warnings };
}
