/** A reference picture as families of value and warm or cool, each with a recipe and an amount of paint. */
export { type Amount, ASSUMED_DENSITY, CANVAS_SETTINGS, type CanvasSettings, amountFor } from './amounts.ts';
export {
  FAMILY_SETTINGS,
  type Families,
  type Family,
  type FamilySettings,
  type Split,
  familiesOf,
} from './families.ts';
export { type NumberPlace, numberPlaces } from './number-places.ts';
export { paintNeeded } from './paint-needed.ts';
export { type Crop, LARGEST_SIDE, type Picture, cropped } from './picture.ts';
export { type LabPicture, PICTURE_WHITE, labPicture } from './picture-lab.ts';
export { type ExactRecipe, type FamilyPour, type PourSettings, pourFamily } from './pours.ts';
export { type FamilyRecipe, type StudyOptions, recipesFor } from './recipes.ts';
export { type Stepping } from './value-steps.ts';
