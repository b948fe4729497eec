import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import { type Amount, type Family, amountFor } from '../../../../src/study/index.ts';
import { displayColour } from '../../../../src/colour/display.ts';
import type { Lab } from '../../../../src/colour/lab.ts';
import type { StudyTable } from './study-state.ts';

/** One family with everything the screen and the sheet say of it. */
export interface FamilyRow {
  readonly number: number;
  readonly family: Family;
  readonly mix: { readonly lab: Lab; readonly value: number } | undefined;
  readonly reached: boolean;
  readonly recipe: NonNullable<StudyTable['recipes']>[number]['recipe'] | undefined;
  readonly amount: Amount | undefined;
}

/** The height that the crop's shape gives a canvas of the width asked for, cm. */
export function canvasHeight({ canvas, crop }: Pick<StudyTable, 'canvas' | 'crop'>): number {
  return crop ? (canvas.widthCentimetres * crop.height) / crop.width : canvas.heightCentimetres;
}

export function familyRows(study: StudyTable, profile: PaletteProfile | undefined): FamilyRow[] {
  const densities = Object.fromEntries((profile?.tubes ?? []).map((tube) => [tube.id, tube.density]));
  const canvas = { ...study.canvas, heightCentimetres: canvasHeight(study) };
  return (study.families?.families ?? []).map((family, i) => {
    const found = study.recipes?.[i];
    return {
      number: i + 1,
      family,
      mix: found && { lab: found.recipe.prediction.lab, value: found.recipe.prediction.value },
      reached: found?.reached ?? false,
      recipe: found?.recipe,
      amount: found && amountFor(family.share, found.recipe.masses, densities, canvas),
    };
  });
}

/** What the study is painted in: the paint, the picture's own colours, or greys of the same value. */
export function rowColour(row: FamilyRow, view: StudyTable['view']): string {
  const lab = view === 'paint' && row.mix ? row.mix.lab : row.family.lab;
  return displayColour(view === 'value' ? { ...lab, a: 0, b: 0 } : lab).srgb;
}
