import type { MixingPalette } from '../../../src/fit/palette.ts';
import {
  type Crop,
  type Families,
  type FamilyPour,
  type FamilyRecipe,
  type FamilySettings,
  type NumberPlace,
  type PourSettings,
  type Picture,
  type StudyOptions,
  cropped,
  familiesOf,
  labPicture,
  numberPlaces,
  pourFamily,
  recipesFor,
} from '../../../src/study/index.ts';

export interface FamiliesAsk {
  readonly picture: Picture;
  readonly crop: Crop;
  readonly settings: FamilySettings;
}

export interface FamiliesAnswer extends Families {
  /** Where each family's number is written. */
  readonly places: readonly NumberPlace[];
}

export interface StudyRecipesAsk {
  readonly families: Families['families'];
  readonly options: Omit<StudyOptions, 'watch'>;
}
export type StudyRecipesAnswer = readonly FamilyRecipe[];

export interface StudyPoursAsk {
  readonly families: Families['families'];
  readonly recipes: StudyRecipesAnswer;
  readonly settings: PourSettings;
}
export type StudyPoursAnswer = readonly FamilyPour[];

/** Longer side the families are worked out on, px: fine enough for a sheet of paper, and done in a blink. */
const LONGEST = 420;

export function familiesJob(_palette: MixingPalette | undefined, ask: FamiliesAsk): FamiliesAnswer {
  const picture = labPicture(cropped(ask.picture, ask.crop), LONGEST);
  const found = familiesOf(picture, ask.settings);
  return { ...found, places: numberPlaces(found.of, found.width, found.height, found.families.length) };
}

export function studyRecipesJob(
  palette: MixingPalette,
  { families, options }: StudyRecipesAsk,
  progress: (share: number) => void,
): StudyRecipesAnswer {
  return recipesFor(palette, families, {
    ...options,
    watch: { onProgress: (done, of) => progress(done / of) },
  });
}

export function studyPoursJob(
  palette: MixingPalette,
  { families, recipes, settings }: StudyPoursAsk,
  progress: (share: number) => void,
): StudyPoursAnswer {
  return families.map((family, i) => {
    progress(i / families.length);
    return pourFamily(palette, family, recipes[i]!.choice, settings);
  });
}
