import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { num } from '../../text/numbers.ts';

type Names = { readonly tubes: readonly Pick<PaletteProfile['tubes'][number], 'id' | 'label'>[] };

/** "1.00 g Ultramarine blue, 2.00 g Titanium white", largest first; a tube that is gone keeps its id. */
export function recipeWords(
  masses: Readonly<Record<string, number>>,
  profile: Names | undefined,
  decimals = 2,
): string {
  const label = (id: string): string => profile?.tubes.find((t) => t.id === id)?.label ?? id;
  return Object.entries(masses)
    .filter(([, grams]) => grams > 0)
    .sort(([, p], [, q]) => q - p)
    .map(([id, grams]) => `${num(grams, decimals)} g ${label(id)}`)
    .join(', ');
}
