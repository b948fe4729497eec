/**
 * The library: read a palette profile and compute with it, without a server, a browser or a port.
 *
 *   import { paletteOf, predictWithCovariance, readProfile } from 'tintladder';
 *   const palette = paletteOf(readProfile(text));
 *   const { measured, labRegion } = predictWithCovariance(palette, { blue: 1, white: 3 });
 *
 * Everything exported is pure and typed; each function's own comment states shapes, units, ranges and errors.
 */
export { GRID_NM } from './colour/grid.ts';
export { type Lab, chroma, hueDegrees, labOf, labOfReflectance, xyzFromLab } from './colour/lab.ts';
export { type WhiteName, parseWhiteName } from './colour/illuminant.ts';
export { type Xyz, xyzOf } from './colour/xyz.ts';
export { tristimulusWeights } from './colour/tristimulus.ts';
export { whitePoint } from './colour/white-point.ts';
export { ciede2000 } from './colour/ciede2000.ts';
export { valueOfReflectance } from './colour/value-of-reflectance.ts';
export { lean, leanWord } from './colour/lean.ts';
export type { MixingPalette } from './fit/palette.ts';
export {
  type PredictedFilm,
  type PredictedReflectance,
  type PredictionWithCovariance,
  predictReflectance,
  predictWithCovariance,
} from './fit/predict.ts';
export type { LabRegion } from './fit/lab-region.ts';
export { paletteOf } from './profile/palette-of.ts';
export { ProfileProblem } from './profile/problem.ts';
export { readProfile } from './profile/read.ts';
export type { PaletteProfile, ProfileTube } from './profile/schema.ts';
export { writeProfile } from './profile/write.ts';
export { type ProfileComparison, compareProfiles } from './profile/compare/compare-profiles.ts';

// Mix: recipes for a colour, value strings, recipes carried to a new tube.
export { type MixPrediction, predictMix } from './mix/predict-mix.ts';
export { type MatchOptions, type MatchResult, matchColour as match } from './mix/match/match-colour.ts';
export type { Recipe } from './mix/match/recipe.ts';
export type { Wanted } from './mix/match/wanted.ts';
export { type ValueString, valueString } from './mix/value-string/value-string.ts';
export { type CarriedRecipe, carryRecipe } from './mix/carry-over/carry-recipe.ts';

// Stay true when tubes change: fit, replace, merge, re-read.
export type { SwatchSet } from './calibrate/swatch-set/schema.ts';
export { readSwatchSet } from './calibrate/swatch-set/read.ts';
export { fitPalette } from './fit/fit-palette.ts';
export type { Advice } from './fit/advice/advice.ts';
export { adviseTube } from './fit/advice/advise-tube.ts';
export { type DoubtSources, doubtSources } from './fit/evidence/doubt-sources.ts';
export { type TubeFilm, tubeFilm } from './fit/film-facts/tube-film.ts';
export { type HalfStrength, halfStrength, strengthPercent } from './fit/strength.ts';
export { type DryingShift, dryingShift, dryingShiftsIn } from './fit/drying-shift.ts';
export { profileFromFit } from './profile/from-fit.ts';
export { type NewTube, type TubeReplacement, replaceTube } from './profile/replace/replace-tube.ts';
export { historyOf } from './profile/replace/put-in-place.ts';
export { type Bridge, WHAT_TO_MEASURE } from './profile/merge/bridge-type.ts';
export { bridgeFromSet } from './profile/merge/bridge.ts';
export { type MergedProfiles, mergeProfiles } from './profile/merge/merge-profiles.ts';
export { rereadSwatches } from './profile/drift/reread-swatches.ts';
export { type DriftReport, yearlyReread } from './profile/drift/yearly-reread.ts';

// Exchange: CGATS.17, CSV, CxF3.
export {
  type Assumption,
  ExchangeProblem,
  type ReadChoices,
  type SpectralTable,
} from './profile/exchange/spectral-table.ts';
export { readCgats } from './profile/exchange/cgats/read.ts';
export { writeCgats } from './profile/exchange/cgats/write.ts';
export { readCsv } from './profile/exchange/csv/read.ts';
export { writeCsv } from './profile/exchange/csv/write.ts';
export { readCxf } from './profile/exchange/cxf/read.ts';
export { writeCxf } from './profile/exchange/cxf/write.ts';
export { profileFromTable, tableFromProfile } from './profile/exchange/constants-table.ts';
export { swatchSetFromTable, tableFromSwatchSet } from './profile/exchange/readings-table.ts';
