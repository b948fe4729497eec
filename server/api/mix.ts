import { z } from 'zod';
import { route } from './route.ts';
import type { Illuminant } from '../../src/colour/illuminant.ts';
import {
  choice,
  edgeMixSchema,
  from,
  gramsSchema,
  pourSchema,
  preTintSchema,
  predictionSchema,
  prioritySchema,
  scaleSchema,
  splitSchema,
  underLightSchema,
  wantedSchema,
} from './mix-words.ts';
import { idSchema, massesSchema } from './words.ts';

export const recipeSchema = z
  .strictObject({
    /** Grams by tube id, and the same as shares of the whole. */
    masses: massesSchema,
    shares: massesSchema,
    prediction: predictionSchema,
    deltaE00: z.number(),
    split: splitSchema,
    /** What the worst slip of one pour would do, CIEDE2000, and whose; null for a recipe sought in whole pours. */
    slip: z.strictObject({ deltaE00: z.number(), tube: idSchema }).nullable(),
    /** How it is poured, where a scale was named; `deltaE00` of the recipe is as made, with the pre-tint where it pays. */
    pour: pourSchema.nullable(),
    made: z.enum(['as poured', 'with a pre-tint']).nullable(),
    /** Colour difference of target and recipe under other lights; only where the target is a spectrum. */
    metamerism: z.array(z.strictObject({ illuminant: z.string(), deltaE00: z.number() })),
  })
  .meta({ id: 'Recipe' });
export type RecipeAnswer = z.infer<typeof recipeSchema>;

/** Lights every prediction is also stated under. */
export const LIGHTS = ['D65', 'D50', 'A', 'LED-B3'] as const satisfies readonly Illuminant[];
export const predictRequestSchema = z.strictObject({ ...from, masses: massesSchema });
export const predictAnswerSchema = predictionSchema.extend({ lights: z.array(underLightSchema) });
export const matchRequestSchema = z.strictObject({
  ...from,
  ...choice,
  target: wantedSchema,
  maxTubes: z.number().int().min(1).max(8).default(4),
  count: z.number().int().min(1).max(20).default(5),
  priority: prioritySchema.default('evenly'),
  grams: gramsSchema.default(10),
  /** Given: recipes are sought in whole steps of this scale, g. */
  scaleResolution: z.number().positive().max(10).optional(),
  /** Smallest amount put on that scale, g. Absent: ten of its steps. */
  smallestPour: z.number().positive().max(1000).optional(),
  /** Differences of CIEDE2000 smaller than this do not decide the order of recipes. */
  closeEnough: z.number().positive().max(5).optional(),
  /** Price of a gram by tube id, any currency. */
  prices: massesSchema.optional(),
});
export const matchAnswerSchema = z.strictObject({
  recipes: z.array(recipeSchema),
  reached: z.boolean(),
  sentence: z.string(),
});

export const additionRequestSchema = z.strictObject({
  ...from,
  ...choice,
  /** Grams already in the pile, where they are known. */
  pile: massesSchema.optional(),
  /** The pile as it was read, where it was. */
  reading: wantedSchema.optional(),
  /** With a reading alone: what the pile weighs, and the tubes that may be in it (absent: any). */
  pileGrams: gramsSchema.optional(),
  pileTubes: z.array(idSchema).min(1).optional(),
  target: wantedSchema,
  maxTubes: z.number().int().min(1).max(3).default(3),
  maxGrams: gramsSchema.optional(),
  /** Grams of the right colour needed in the end. Absent: as much as the pile. */
  wantedGrams: gramsSchema.optional(),
  priority: prioritySchema.default('evenly'),
  /** Given: additions come in whole steps of it, none under its smallest pour. */
  scale: scaleSchema.optional(),
});
const oneAdditionSchema = z.strictObject({
  add: massesSchema,
  grams: z.number(),
  deltaE00: z.number(),
  split: splitSchema,
});
export const additionAnswerSchema = z.strictObject({
  /** What the pile is taken for; `misfit` is CIEDE2000 between its reading and its masses, null without a reading. */
  pile: z.strictObject({
    masses: massesSchema,
    grams: z.number(),
    estimated: z.boolean(),
    misfit: z.number().nullable(),
  }),
  /** The pile as it is against what is wanted. */
  now: splitSchema,
  /** Least paint first; each that takes more comes nearer. */
  additions: z.array(oneAdditionSchema),
  advised: oneAdditionSchema.nullable(),
  /** The same amount mixed afresh, and whether that wastes less paint. */
  afresh: z.strictObject({
    /** Grams besides the pre-tints. */
    masses: massesSchema,
    preTints: z.array(preTintSchema),
    grams: z.number(),
    deltaE00: z.number(),
    wastesLess: z.boolean(),
  }),
  sentence: z.string(),
});

export const limitsRequestSchema = z.strictObject({
  ...from,
  only: choice.only,
  hues: z.number().int().min(4).max(72).default(24),
});
export const limitsAnswerSchema = z.strictObject({
  darkest: edgeMixSchema,
  lightest: edgeMixSchema,
  neutrals: z.array(edgeMixSchema.extend({ wantedValue: z.number() })),
  leans: z.array(z.strictObject({ value: z.number(), warmest: edgeMixSchema, coolest: edgeMixSchema })),
  strongest: z.array(edgeMixSchema.extend({ wantedHue: z.number() })),
  slices: z.array(
    z.strictObject({
      value: z.number(),
      edge: z.array(z.strictObject({ hue: z.number(), chroma: z.number() })),
      area: z.number(),
    }),
  ),
  /** CIELAB units cubed, for comparing palettes. */
  volume: z.number(),
});

export const valueStringRequestSchema = z.strictObject({
  ...from,
  only: choice.only,
  steps: z.number().int().min(2).max(60).default(9),
  /** Munsell values of the ends; absent: the darkest and the lightest there is. */
  darkest: z.number().min(0).max(10).optional(),
  lightest: z.number().min(0).max(10).optional(),
  /** What runs along it: neutrals, a fixed lean, or one tube let down with the white. */
  kind: z
    .union([z.literal('neutral'), z.strictObject({ lean: z.number() }), z.strictObject({ tube: idSchema })])
    .default('neutral'),
  grams: gramsSchema.default(10),
  /** Given: each step is also sought in whole steps of it. */
  scale: scaleSchema.optional(),
});
export const valueStringAnswerSchema = z.strictObject({
  steps: z.array(
    z.strictObject({
      value: z.number(),
      /** Null where these tubes have no such value. */
      masses: massesSchema.nullable(),
      prediction: predictionSchema.nullable(),
      pour: pourSchema.nullable(),
      ofFamily: z.boolean(),
    }),
  ),
  warnings: z.array(z.string()),
});

export const mixRoutes = {
  predict: route({
    method: 'POST',
    path: '/api/predict',
    summary: 'The colour of a recipe, with its interval',
    body: predictRequestSchema,
    answer: predictAnswerSchema,
  }),
  match: route({
    method: 'POST',
    path: '/api/match',
    summary: 'Recipes for a wanted colour',
    body: matchRequestSchema,
    answer: matchAnswerSchema,
  }),
  addition: route({
    method: 'POST',
    path: '/api/addition',
    summary: 'What to add to a pile already mixed',
    body: additionRequestSchema,
    answer: additionAnswerSchema,
  }),
  limits: route({
    method: 'POST',
    path: '/api/limits',
    summary: 'What the palette can reach',
    body: limitsRequestSchema,
    answer: limitsAnswerSchema,
  }),
  valueString: route({
    method: 'POST',
    path: '/api/value-string',
    summary: 'Equal value steps from dark to light, each with its recipe',
    body: valueStringRequestSchema,
    answer: valueStringAnswerSchema,
  }),
};
