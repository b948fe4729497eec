/**
 * The mixing room: what tubes do together. Everything here is pure; a page, a worker, the server and the command line
 * call the same functions. See docs/mixing.md.
 */
export { MixProblem, MixingStopped, type Watch } from './problem.ts';

// Predict.
export {
  type MixColour,
  type MixInterval,
  type MixPrediction,
  colourOfReflectance,
  contrastRatio,
  predictFilms,
  predictMix,
  undertoneToImpasto,
} from './predict-mix.ts';
export { type FilmStack, type Ground, type Masses, type PaintFilm } from './film-stack.ts';
export { type WhiteScattering, filmThickness } from './film-thickness.ts';
export { type TubeSet, type TubeSetOptions, effectiveParts, tubeSet } from './tube-set.ts';
export { CHANNELS, type MixKernel, VALUE_CHANNEL, mixKernel } from './kernel.ts';

// Match.
export { type MatchOptions, type MatchResult, REACHED_DELTA_E00, matchColour } from './match/match-colour.ts';
export { type Recipe } from './match/recipe.ts';
export { PRIORITIES, type Priority, type Wanted } from './match/wanted.ts';
export { type ColourSplit, splitDifference, valueOfLab } from './match/difference.ts';
export { type Metamerism, TEST_ILLUMINANTS, metamerism, metamerismIndex } from './metamerism.ts';
