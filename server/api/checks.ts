import { z } from 'zod';
import { route } from './route.ts';
import { readingSchema, takeReadingSchema } from './readings.ts';
import { bandCurveSchema } from './fits.ts';
import { colourSchema, findingSchema, idSchema, labelSchema, massesSchema, timeSchema } from './words.ts';

/** Predicted against measured for something never fitted. */
export const checkResultSchema = z.strictObject({
  profileId: idSchema,
  predicted: bandCurveSchema,
  predictedColour: colourSchema,
  measuredColour: colourSchema,
  /** Measured on the reading's own channels, and the prediction as that instrument would read it. */
  channels: z.array(z.string()),
  measured: z.array(z.number()),
  predictedReading: z.array(z.number()),
  deltaE00: z.number(),
  inside95: z.boolean(),
  sentence: z.string(),
});

export const checkSchema = z
  .strictObject({
    id: idSchema,
    paletteId: idSchema,
    title: labelSchema,
    /** Grams, or parts by mass. */
    masses: massesSchema,
    note: z.string(),
    createdAt: timeSchema,
    readings: z.array(readingSchema),
    /** Null until a reading and a profile are there. */
    result: checkResultSchema.nullable(),
    /** What stands in the way of a result. */
    sentence: z.string(),
  })
  .meta({ id: 'Check' });
export type CheckAnswer = z.infer<typeof checkSchema>;

export const newCheckSchema = z.strictObject({
  title: labelSchema.optional(),
  masses: massesSchema,
  note: z.string().max(2000).default(''),
});

const params = z.strictObject({ checkId: idSchema });

export const checkRoutes = {
  listChecks: route({
    method: 'GET',
    path: '/api/checks',
    summary: 'Checks of the current palette',
    query: z.strictObject({ palette: idSchema.optional() }),
    answer: z.strictObject({
      checks: z.array(checkSchema),
      summary: z
        .strictObject({
          count: z.number().int(),
          meanDeltaE00: z.number(),
          maxDeltaE00: z.number(),
          inside95: z.number(),
          sentence: z.string(),
        })
        .nullable(),
    }),
  }),
  createCheck: route({
    method: 'POST',
    path: '/api/checks',
    summary: 'Write down a mixture that is to be read and never fitted',
    body: newCheckSchema,
    answer: checkSchema,
    status: 201,
  }),
  readCheck: route({
    method: 'POST',
    path: '/api/checks/:checkId/readings',
    summary: 'Read the mixture with the head, or hand in a reading',
    params,
    body: takeReadingSchema,
    answer: z.strictObject({
      reading: readingSchema.nullable(),
      findings: z.array(findingSchema),
      check: checkSchema,
    }),
    status: 201,
  }),
  deleteCheck: route({
    method: 'DELETE',
    path: '/api/checks/:checkId',
    summary: 'Put a check away; its readings stay in the store',
    params,
    status: 204,
  }),
};
