import { z } from 'zod';
import { route } from './route.ts';
import { bandCurveSchema } from './fits.ts';
import { colourSchema, idSchema, labSchema, massesSchema, whiteSchema } from './words.ts';

/** Every mixing request works from the current profile unless one is named. */
const from = { profileId: idSchema.optional(), white: whiteSchema.optional() };

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

export const recipeSchema = z
  .strictObject({
    masses: massesSchema,
    prediction: predictionSchema,
    deltaE00: z.number(),
    /** Colour error one pour off by the scale's step would add, CIEDE2000. */
    pourError: z.number().nullable(),
    sentence: z.string(),
  })
  .meta({ id: 'Recipe' });

export const predictRequestSchema = z.strictObject({ ...from, masses: massesSchema });
export const matchRequestSchema = z.strictObject({
  ...from,
  target: z.union([
    z.strictObject({ Lab: labSchema }),
    z.strictObject({ reflectance: z.array(z.number()).length(36) }),
  ]),
  maxTubes: z.number().int().min(1).max(8).default(4),
  count: z.number().int().min(1).max(20).default(5),
  /** Hold the value exact and let hue go. */
  holdValue: z.boolean().default(false),
  grams: z.number().positive().max(100_000).default(10),
  scaleResolution: z.number().positive().max(10).optional(),
  without: z.array(idSchema).max(200).default([]),
});
export const additionRequestSchema = z.strictObject({
  ...from,
  /** Grams already in the pile. */
  pile: massesSchema,
  target: labSchema,
  /** The pile as measured, where it was. */
  measured: labSchema.optional(),
  maxGrams: z.number().positive().max(100_000).default(20),
  holdValue: z.boolean().default(false),
});
export const limitsRequestSchema = z.strictObject({ ...from });
export const valueStringRequestSchema = z.strictObject({
  ...from,
  steps: z.number().int().min(2).max(30).default(9),
  from: idSchema.optional(),
});

/** Recipes are the mixing room's own documents; their members are listed in docs/method.md. */
const loose = z.looseObject({});

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
    answer: z.strictObject({ recipes: z.array(loose), sentence: z.string() }),
  }),
  addition: route({
    method: 'POST',
    path: '/api/addition',
    summary: 'What to add to a pile already mixed',
    body: additionRequestSchema,
    answer: z.strictObject({ additions: z.array(loose), sentence: z.string() }),
  }),
  limits: route({
    method: 'POST',
    path: '/api/limits',
    summary: 'What the palette can reach',
    body: limitsRequestSchema,
    answer: loose,
  }),
  valueString: route({
    method: 'POST',
    path: '/api/value-string',
    summary: 'Equal value steps from dark to light, each with its recipe',
    body: valueStringRequestSchema,
    answer: z.strictObject({ steps: z.array(loose), sentence: z.string() }),
  }),
};
