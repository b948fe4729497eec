import type { z } from 'zod';
import type { WhiteName } from '../../src/colour/illuminant.ts';
import type { MixingPalette } from '../../src/fit/palette.ts';
import { addToPile, type Addition } from '../../src/mix/addition/add-to-pile.ts';
import { paletteLimits } from '../../src/mix/limits/palette-limits.ts';
import { type MatchOptions, matchColour } from '../../src/mix/match/match-colour.ts';
import type { Recipe } from '../../src/mix/match/recipe.ts';
import { asMade, pourMatch } from '../../src/mix/pour/pour-match.ts';
import { valueString } from '../../src/mix/value-string/value-string.ts';
import { compareProfiles, type ProfileComparison } from '../../src/profile/compare/compare-profiles.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import { readProfile } from '../../src/profile/read.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import type {
  additionAnswerSchema,
  additionRequestSchema,
  limitsAnswerSchema,
  limitsRequestSchema,
  matchAnswerSchema,
  matchRequestSchema,
  valueStringAnswerSchema,
  valueStringRequestSchema,
} from '../api/mix.ts';
import { type CheckedOne, type CheckJob, runChecks } from '../checking/run-checks.ts';
import { defined } from '../defined.ts';
import { type AdviceAnswers, type AdviceJob, edgeMixView, runAdvice } from './advice-jobs.ts';
import {
  type MergeAnswer,
  type MergeJob,
  type ReplaceAnswer,
  type ReplaceJob,
  runMerge,
  runReplace,
} from './renew-jobs.ts';
import { pourView, preTintView, predictionView, scaleOf, wantedOf, whiteNameOf } from './views.ts';

/** A search of the mixing room with its request, as a worker is given it. */
export type MixJob =
  | { readonly kind: 'match'; readonly request: z.infer<typeof matchRequestSchema> }
  | { readonly kind: 'addition'; readonly request: z.infer<typeof additionRequestSchema> }
  | { readonly kind: 'limits'; readonly request: z.infer<typeof limitsRequestSchema> }
  | { readonly kind: 'value string'; readonly request: z.infer<typeof valueStringRequestSchema> }
  | { readonly kind: 'compare'; readonly request: CompareRequest }
  | { readonly kind: 'replace'; readonly request: ReplaceJob }
  | { readonly kind: 'merge'; readonly request: MergeJob }
  | { readonly kind: 'checks'; readonly request: ChecksRequest }
  | AdviceJob;

/** The job's own profile against a second one. */
export interface CompareRequest {
  readonly white?: undefined;
  /** The second profile as text. */
  readonly second: string;
  readonly pairs: readonly { readonly older: string; readonly newer: string }[];
}

export interface ChecksRequest {
  readonly white?: undefined;
  readonly jobs: readonly CheckJob[];
}

export interface MixAnswers extends AdviceAnswers {
  readonly match: z.infer<typeof matchAnswerSchema>;
  readonly addition: z.infer<typeof additionAnswerSchema>;
  readonly limits: z.infer<typeof limitsAnswerSchema>;
  readonly 'value string': z.infer<typeof valueStringAnswerSchema>;
  readonly compare: ProfileComparison;
  /** Job by job, check by check. */
  readonly checks: readonly (readonly CheckedOne[])[];
  readonly replace: ReplaceAnswer;
  readonly merge: MergeAnswer;
}

/** Runs one search. @throws MixProblem, RangeError */
export function runMix(profile: PaletteProfile, job: MixJob): MixAnswers[MixJob['kind']] {
  const palette = paletteOf(profile);
  const white = whiteNameOf(job.request.white);
  switch (job.kind) {
    case 'match':
      return match(palette, white, job.request);
    case 'addition':
      return addition(palette, white, job.request);
    case 'limits':
      return limits(palette, white, job.request);
    case 'value string':
      return string(palette, white, job.request);
    case 'compare':
      return compareProfiles(profile, readProfile(job.request.second), job.request.pairs);
    case 'checks':
      return runChecks(profile, job.request.jobs);
    case 'replace':
      return runReplace(profile, job.request);
    case 'merge':
      return runMerge(profile, job.request);
    default:
      return runAdvice(profile, job);
  }
}

function match(
  palette: MixingPalette,
  white: WhiteName,
  request: z.infer<typeof matchRequestSchema>,
): MixAnswers['match'] {
  const { maxTubes, count, priority, grams, only, without, scaleResolution, smallestPour } = request;
  const { closeEnough, prices } = request;
  const options: MatchOptions = {
    maxTubes,
    count,
    priority,
    grams,
    white,
    ...defined({ only, without, closeEnough, prices }),
  };
  const target = wantedOf(request.target, white);
  if (scaleResolution === undefined) {
    const { recipes, reached, sentence } = matchColour(palette, target, options);
    return { reached, sentence, recipes: recipes.map((r) => ({ ...recipeView(r), pour: null, made: null })) };
  }
  const scale = { resolution: scaleResolution, ...defined({ smallestPour }) };
  const { recipes, reached, sentence } = pourMatch(palette, target, { ...options, grams, scale });
  return {
    reached,
    sentence,
    recipes: recipes.map(({ recipe, pour, deltaE00, made }) => ({
      ...recipeView(recipe),
      masses: { ...pour.masses },
      shares: Object.fromEntries(Object.entries(pour.masses).map(([id, mass]) => [id, mass / pour.grams])),
      prediction: predictionView(asMade(pour).prediction),
      deltaE00,
      split: { ...asMade(pour).split },
      slip: null,
      pour: pourView(pour),
      made,
    })),
  };
}

function recipeView({ masses, shares, prediction, deltaE00, split, slip, metamerism }: Recipe) {
  return {
    masses: { ...masses },
    shares: { ...shares },
    prediction: predictionView(prediction),
    deltaE00,
    split: { ...split },
    slip: { ...slip },
    metamerism: (metamerism ?? []).map(({ illuminant, deltaE00: dE }) => ({ illuminant, deltaE00: dE })),
  };
}

function addition(
  palette: MixingPalette,
  white: WhiteName,
  request: z.infer<typeof additionRequestSchema>,
): MixAnswers['addition'] {
  const { pile, reading, pileGrams, pileTubes, maxTubes, maxGrams, wantedGrams, priority } = request;
  const { only, without, scale } = request;
  const result = addToPile(
    palette,
    {
      ...defined({ masses: pile, grams: pileGrams, tubes: pileTubes }),
      ...(reading ? { reading: wantedOf(reading, white) } : {}),
    },
    wantedOf(request.target, white),
    { maxTubes, priority, white, ...defined({ maxGrams, wantedGrams, only, without }), ...scaleOf(scale) },
  );
  const { masses, grams: weighs, estimated, misfit } = result.pile;
  const one = ({ add, grams, deltaE00, split }: Addition) => ({
    add: { ...add },
    grams,
    deltaE00,
    split: { ...split },
  });
  return {
    pile: { masses: { ...masses }, grams: weighs, estimated, misfit },
    now: { ...result.now },
    additions: result.additions.map(one),
    advised: result.advised ? one(result.advised) : null,
    afresh: {
      ...result.afresh,
      masses: { ...result.afresh.masses },
      preTints: result.afresh.preTints.map(preTintView),
    },
    sentence: result.sentence,
  };
}

function limits(
  palette: MixingPalette,
  white: WhiteName,
  request: z.infer<typeof limitsRequestSchema>,
): MixAnswers['limits'] {
  const found = paletteLimits(palette, { white, hues: request.hues, ...defined({ only: request.only }) });
  const mix = edgeMixView;
  return {
    darkest: mix(found.darkest),
    lightest: mix(found.lightest),
    neutrals: found.neutrals.map((n) => ({ ...mix(n), wantedValue: n.wantedValue })),
    leans: found.leans.map((l) => ({ value: l.value, warmest: mix(l.warmest), coolest: mix(l.coolest) })),
    strongest: found.strongest.map((s) => ({ ...mix(s), wantedHue: s.hue })),
    slices: found.slices.map((s) => ({ value: s.value, edge: s.edge.map((e) => ({ ...e })), area: s.area })),
    volume: found.volume,
  };
}

function string(
  palette: MixingPalette,
  white: WhiteName,
  request: z.infer<typeof valueStringRequestSchema>,
): MixAnswers['value string'] {
  const { steps, darkest, lightest, kind, grams, only, scale } = request;
  const found = valueString(palette, {
    steps,
    kind,
    grams,
    white,
    ...(darkest === undefined ? {} : { from: { value: darkest } }),
    ...(lightest === undefined ? {} : { to: { value: lightest } }),
    ...defined({ only }),
    ...scaleOf(scale),
  });
  return {
    steps: found.steps.map((step) => ({
      value: step.value,
      masses: step.masses ? { ...step.masses } : null,
      prediction: step.prediction ? predictionView(step.prediction) : null,
      pour: step.pour ? pourView(step.pour) : null,
      ofFamily: step.ofFamily,
    })),
    warnings: [...found.warnings],
  };
}
