import type { PaletteProfile } from '../../../../src/profile/schema.ts';
import type { Amount, Family, FamilyPour } from '../../../../src/study/index.ts';
import { displayColour } from '../../../../src/colour/display.ts';
import type { Lab } from '../../../../src/colour/lab.ts';
import { squeezed } from '../mixing/pour-words.ts';
import type { StudyTable } from './study-state.ts';

/** One family with everything the screen and the sheet say of it. */
export interface FamilyRow {
  readonly number: number;
  readonly family: Family;
  readonly mix: { readonly lab: Lab; readonly value: number } | undefined;
  readonly reached: boolean;
  readonly recipe: NonNullable<StudyTable['recipes']>[number]['recipe'] | undefined;
  /** What is weighed; absent until it is worked out. */
  readonly poured: FamilyPour | undefined;
  /** The same, to be added up. */
  readonly amount: Amount | undefined;
}

/** The height that the crop's shape gives a canvas of the width asked for, cm. */
export function canvasHeight({ canvas, crop }: Pick<StudyTable, 'canvas' | 'crop'>): number {
  return crop ? (canvas.widthCentimetres * crop.height) / crop.width : canvas.heightCentimetres;
}

/** Densities of a profile's tubes, g/ml, where known. */
export function densitiesOf(profile: PaletteProfile): Record<string, number | undefined> {
  return Object.fromEntries(profile.tubes.map((tube) => [tube.id, tube.density]));
}

export function familyRows(study: StudyTable): FamilyRow[] {
  return (study.families?.families ?? []).map((family, i) => {
    const found = study.recipes?.[i];
    const poured = study.pours?.[i];
    const { prediction } = (poured ? (poured.pour.preTint ?? poured.pour) : found?.recipe) ?? {};
    return {
      number: i + 1,
      family,
      mix: prediction && { lab: prediction.lab, value: prediction.value },
      reached: found?.reached ?? false,
      recipe: found?.recipe,
      poured,
      amount: poured && {
        grams: squeezed(poured.pour),
        total: poured.pour.grams,
        assumedDensity: poured.assumedDensity,
      },
    };
  });
}

/** What the study is painted in: the paint, the picture's own colours, or greys of the same value. */
export function rowColour(row: FamilyRow, view: StudyTable['view']): string {
  const lab = view === 'paint' && row.mix ? row.mix.lab : row.family.lab;
  return displayColour(view === 'value' ? { ...lab, a: 0, b: 0 } : lab).srgb;
}
