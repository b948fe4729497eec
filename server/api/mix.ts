import { z } from 'zod';
import { route } from './route.ts';
import { bandCurveSchema } from './fits.ts';
import { colourSchema, idSchema, labSchema, massesSchema, whiteSchema } from './words.ts';

/** Every mixing request works from the current profile unless one is named. */
const from = { profileId: idSchema.optional(), white: whiteSchema.optional() };
const choice = {
  only: z.array(idSchema).max(200).optional(),
  without: z.array(idSchema).max(200).optional(),
};
const grams = z.number().positive().max(100_000);
const prioritySchema = z.enum(['evenly', 'value', 'hue']);

export const intervalSchema = z.strictObject({
  /** 95 % of mixes made by this recipe lie within this CIEDE2000 of the predicted colour. */
  radius95: z.number(),
  valueLow: z.number(),
  valueHigh: z.number(),
  leanLow: z.number(),
  leanHigh: z.number(),
});

export const predictionSchema = z
  .strictObject({
    wavelengths: z.array(z.number()),
    /** As the profile's geometry reads it. */
    reflectance: bandCurveSchema,
    colour: colourSchema,
    interval: intervalSchema,
    warnings: z.array(z.string()),
  })
  .meta({ id: 'Prediction' });
export type PredictionAnswer = z.infer<typeof predictionSchema>;

/** A wanted colour: CIELAB under the request's white, or 36 reflectance factors on the grid. */
export const wantedSchema = z.union([
  z.strictObject({ Lab: labSchema }),
  z.strictObject({ reflectance: z.array(z.number()).length(36) }),
]);

/** How a mix differs from what was wanted; all are mix minus wanted. */
export const splitSchema = z.strictObject({
  deltaE00: z.number(),
  value: z.number(),
  chroma: z.number(),
  hue: z.number(),
  lean: z.number(),
  /** "value kept, too cool by 6". */
  sentence: z.string(),
});

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
  })
  .meta({ id: 'Recipe' });
export type RecipeAnswer = z.infer<typeof recipeSchema>;

/** The extreme mixes of limits: shares by mass and the colour they make. */
export const edgeMixSchema = z.strictObject({
  shares: massesSchema,
  Lab: labSchema,
  value: z.number(),
  lean: z.number(),
  chroma: z.number(),
});

export const predictRequestSchema = z.strictObject({ ...from, masses: massesSchema });
export const matchRequestSchema = z.strictObject({
  ...from,
  ...choice,
  target: wantedSchema,
  maxTubes: z.number().int().min(1).max(8).default(4),
  count: z.number().int().min(1).max(20).default(5),
  priority: prioritySchema.default('evenly'),
  grams: grams.default(10),
  /** Given: recipes are sought in whole steps of this scale, g. */
  scaleResolution: z.number().positive().max(10).optional(),
});
export const matchAnswerSchema = z.strictObject({
  recipes: z.array(recipeSchema),
  reached: z.boolean(),
  sentence: z.string(),
});

export const additionRequestSchema = z.strictObject({
  ...from,
  ...choice,
  /** Grams already in the pile. */
  pile: massesSchema,
  /** The pile as it was read, where it was. */
  reading: wantedSchema.optional(),
  target: wantedSchema,
  maxTubes: z.number().int().min(1).max(3).default(3),
  maxGrams: grams.optional(),
  priority: prioritySchema.default('evenly'),
});
const oneAdditionSchema = z.strictObject({
  add: massesSchema,
  grams: z.number(),
  deltaE00: z.number(),
  split: splitSchema,
});
export const additionAnswerSchema = z.strictObject({
  /** The pile as it is against what is wanted. */
  now: splitSchema,
  /** Least paint first; each that takes more comes nearer. */
  additions: z.array(oneAdditionSchema),
  advised: oneAdditionSchema.nullable(),
  /** The same amount mixed afresh, and whether that wastes less paint. */
  afresh: z.strictObject({
    masses: massesSchema,
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
  grams: grams.default(10),
});
export const valueStringAnswerSchema = z.strictObject({
  steps: z.array(
    z.strictObject({
      value: z.number(),
      /** Null where these tubes have no such value. */
      masses: massesSchema.nullable(),
      prediction: predictionSchema.nullable(),
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
    answer: predictionSchema,
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
