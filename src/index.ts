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
export { type Xyz, tristimulusWeights, whitePoint, xyzOf } from './colour/tristimulus.ts';
export { ciede2000 } from './colour/ciede2000.ts';
export { valueOfReflectance } from './colour/munsell-value.ts';
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
