import type { MixingPalette } from '../../../src/fit/palette.ts';
import {
  type Crop,
  type Families,
  type FamilyRecipe,
  type FamilySettings,
  type NumberPlace,
  type Picture,
  type StudyOptions,
  cropped,
  familiesOf,
  labPicture,
  numberPlaces,
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
