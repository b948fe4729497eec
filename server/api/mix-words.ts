import { z } from 'zod';
import { bandCurveSchema } from './fits.ts';
import { colourSchema, idSchema, illuminantSchema, labSchema, massesSchema, whiteSchema } from './words.ts';

/** The small schemas that requests to mix are written in. */

/** Every mixing request works from the current profile unless one is named. */
export const from = { profileId: idSchema.optional(), white: whiteSchema.optional() };
export const choice = {
  only: z.array(idSchema).max(200).optional(),
  without: z.array(idSchema).max(200).optional(),
};
export const gramsSchema = z.number().positive().max(100_000);
export const prioritySchema = z.enum(['evenly', 'value', 'hue']);
/** What a scale and a hand can do, g; the smallest pour is ten steps unless said otherwise. */
export const scaleSchema = z.strictObject({
  resolution: z.number().positive().max(10),
  smallestPour: z.number().positive().max(1000).optional(),
});

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

/** One colour under another light, the observer as in the request. */
export const underLightSchema = z.strictObject({
  illuminant: illuminantSchema,
  Lab: labSchema,
  lean: z.number(),
});

/** A wanted colour: CIELAB under the request's white, or 36 reflectance factors on the grid. */
export const wantedSchema = z.union([
  z.strictObject({ Lab: labSchema }),
  z.strictObject({ reflectance: z.array(z.number()).length(36) }),
]);
export type WantedRequest = z.infer<typeof wantedSchema>;

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

/** A strong tube let down first, so that its tint can be weighed. */
export const preTintSchema = z.strictObject({
  strong: idSchema,
  light: idSchema,
  /** Parts of the light tube to one of the strong. */
  parts: z.number(),
  make: massesSchema,
  /** Grams of the pre-tint the recipe takes. */
  pour: z.number(),
});

/** How a recipe is poured on a scale. */
export const pourSchema = z.strictObject({
  masses: massesSchema,
  grams: z.number(),
  deltaE00: z.number(),
  /** What rounding the exact recipe to the scale would give; null where it leaves nothing. */
  roundedDeltaE00: z.number().nullable(),
  /** Tubes of the exact recipe that no pour of this size can hold. */
  leftOut: z.array(idSchema),
  /** Dark into light: what to put down first, and what only a little at a time. */
  order: z.array(
    z.strictObject({ tube: idSchema, grams: z.number(), how: z.enum(['start', 'add', 'in small steps']) }),
  ),
  /** Where strong tubes fall under the smallest pour: what to let down first; null where that helps none. */
  preTint: z
    .strictObject({
      tints: z.array(preTintSchema),
      /** Grams of the other tubes. */
      masses: massesSchema,
      deltaE00: z.number(),
    })
    .nullable(),
  /** One sentence for each tube left out that no pre-tint helps. */
  noPreTint: z.array(z.string()),
});

export type PourAnswer = z.infer<typeof pourSchema>;

/** The extreme mixes of limits: shares by mass and the colour they make. */
export const edgeMixSchema = z.strictObject({
  shares: massesSchema,
  Lab: labSchema,
  value: z.number(),
  lean: z.number(),
  chroma: z.number(),
});
