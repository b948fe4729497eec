import { z } from 'zod';
import { route } from './route.ts';
import { idSchema, labSchema } from './words.ts';

/** A number with the bounds that hold the truth 95 times in 100. */
const ranged = { value: z.number(), low: z.number(), high: z.number() };
const rangedSchema = z.strictObject(ranged);

export const filmFactsSchema = z.strictObject({
  /** Y over black divided by Y over white of the masstone at the thickness asked for, D65/10deg. */
  contrast: z.strictObject({
    ...ranged,
    /** Thickness in units of the white's scattering, and in um of wet film where that is known. */
    X: z.number().positive(),
    micrometres: z.number().positive().nullable(),
    /** Y of the film that hides, 0..100; ISO 6504-3 covers paints over 25, ASTM D2805 over 15. */
    Y: z.number(),
    iso6504: z.boolean(),
    astmD2805: z.boolean(),
  }),
  /** Thickness for a contrast ratio of 0.98. */
  fullHiding: z.strictObject({
    X: rangedSchema,
    micrometres: rangedSchema.nullable(),
  }),
  /** Scattering of the masstone per um of wet film on the grid; null where no thickness was given. */
  scattering: z
    .strictObject({
      wavelengths: z.array(z.number()),
      value: z.array(z.number()),
      low: z.array(z.number()),
      high: z.array(z.number()),
    })
    .nullable(),
  /** A thin film over a white card, and the CIEDE2000 that it is sure to. */
  undertone: z.strictObject({ X: z.number(), Lab: labSchema, radius: z.number() }),
});

export const dryingSchema = z.strictObject({
  /** The swatch as first read. */
  name: z.string(),
  rungId: idSchema.nullable(),
  /** Days from drawing it down to each reading; null where nobody said. */
  wetDays: z.number().nullable(),
  dryDays: z.number().nullable(),
  wet: labSchema,
  dry: labSchema,
  /** CIEDE2000 (D65/10deg) with the bounds that hold the true shift 95 times in 100. */
  deltaE00: z.number(),
  low: z.number(),
  high: z.number(),
  /** More than the noise of the two readings allows 95 times in 100. */
  beyondNoise: z.boolean(),
  sentence: z.string(),
});

export const tubeFactsSchema = z
  .strictObject({
    tubeId: idSchema,
    profileId: idSchema,
    film: filmFactsSchema,
    /** Parts of white that take the paint half way from its own lightness to the white's; null for the white. */
    halfStrength: rangedSchema.nullable(),
    /** Per cent of the other tube's tinting strength (ASTM D4838, 1:4); null where none was asked for. */
    strengthPercent: rangedSchema.nullable(),
    /** What the doubt in this tube's mixtures comes from; shares sum to 1. */
    doubt: z.strictObject({
      shares: z.strictObject({
        own: z.number(),
        shared: z.number(),
        others: z.number(),
        equations: z.number(),
      }),
      dominant: z.enum(['own', 'shared', 'others', 'equations']),
      /** Mean CIEDE2000 that mixtures hold within 95 times in 100: all, and by L*. */
      radius: z.number(),
      darks: z.number().nullable(),
      middles: z.number().nullable(),
      lights: z.number().nullable(),
      sentence: z.string(),
    }),
    /** Films read again later, against their first reading. */
    drying: z.array(dryingSchema),
  })
  .meta({ id: 'TubeFacts' });
export type TubeFacts = z.infer<typeof tubeFactsSchema>;

/** Checks that hold a tube, by the current profile. */
export const tubeChecksSchema = z
  .strictObject({
    tubeId: idSchema,
    count: z.number().int(),
    /** CIEDE2000 between foretold and read; null where none was read. */
    mean: z.number().nullable(),
    worst: z.number().nullable(),
    /** Share of them inside their 95 % region. */
    inside95: z.number().nullable(),
  })
  .meta({ id: 'TubeChecks' });
export type TubeChecks = z.infer<typeof tubeChecksSchema>;

const thickness = z.coerce.number().positive().max(100_000).optional();

export const tubeFactsRoutes = {
  getTubeFacts: route({
    method: 'GET',
    path: '/api/tubes/:tubeId/facts',
    summary:
      'Hiding, scattering, undertone, strength, drying and what the doubt comes from, by the current profile',
    params: z.strictObject({ tubeId: idSchema }),
    query: z.strictObject({
      /** Film for the contrast ratio: wet um, or units of the white's scattering. */
      micrometres: thickness,
      x: thickness,
      /** The tube whose tinting strength counts as 100 %. */
      against: idSchema.optional(),
    }),
    answer: tubeFactsSchema,
  }),
  getTubeChecks: route({
    method: 'GET',
    path: '/api/tubes/:tubeId/checks',
    summary: 'How well mixtures never fitted that hold this tube came out as foretold',
    params: z.strictObject({ tubeId: idSchema }),
    answer: tubeChecksSchema,
  }),
};
