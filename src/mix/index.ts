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

// Pour.
export { type Scale, canPour } from './pour/scale.ts';
export { type Pour, type PourOptions, pourRecipe } from './pour/pour-recipe.ts';
export { type PouredRecipe, type PourMatchResult, asMade, pourMatch } from './pour/pour-match.ts';
export { type PreTint, type PreTintPlan } from './pour/pre-tint.ts';
export { type PartsOptions, type WholeParts, mostPartsOf, wholeParts } from './pour/whole-parts.ts';
export { type PourStep, orderOfAddition } from './pour/order.ts';

// Correct a pile.
export {
  type Addition,
  type AdditionOptions,
  type AdditionResult,
  addToPile,
} from './addition/add-to-pile.ts';
export { type KnownPile, type Pile, knownPile } from './addition/pile.ts';
export { type Afresh } from './addition/afresh.ts';

// Limits.
export {
  type LimitsOptions,
  type PaletteLimits,
  type TubeGain,
  oneMoreTube,
  paletteLimits,
} from './limits/palette-limits.ts';
export { type FacesOptions, mixFaces } from './limits/mix-faces.ts';
export { type EdgeMix } from './limits/edge-search.ts';
export { type LeanPair, type NeutralPoint, type StrongestColour } from './limits/edges.ts';
export { type ValueSlice } from './limits/slices.ts';
export { type Reach, reachOf } from './limits/inside.ts';

// Value strings.
export {
  type StringEnd,
  type StringKind,
  type StringStep,
  type ValueString,
  type ValueStringOptions,
  valueString,
} from './value-string/value-string.ts';
export { type Highlight, highlights } from './value-string/highlight.ts';

// Lean and mud.
export { type MudBetween, type WayPoint, betweenTwo } from './lean-and-mud/between-two.ts';
export { NUDGES, type Nudge, type NudgeAddition, nudges } from './lean-and-mud/nudge.ts';

// Carry recipes over to a new tube.
export {
  type CarriedRecipe,
  type CarryOptions,
  type PourChange,
  type Replacements,
  carryRecipe,
} from './carry-over/carry-recipe.ts';
export { type CarriedString, carryValueString } from './carry-over/carry-string.ts';
export { type CarriedOutcome } from './carry-over/carried-words.ts';

// A reading as a wanted colour.
export {
  type InstrumentReading,
  type SpectrumOfReading,
  spectrumOfReading,
} from './match/spectrum-of-reading.ts';
