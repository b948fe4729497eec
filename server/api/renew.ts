import { z } from 'zod';
import { importRequestSchema } from './imports.ts';
import { route } from './route.ts';
import { idSchema, labelSchema, massesSchema } from './words.ts';

export const replaceRequestSchema = z.strictObject({
  oldTubeId: idSchema,
  /** Short ladder: the white's and the new tube's masstone and one tint, in any format an import takes. */
  file: importRequestSchema,
  /** The new tube; the old one's id where the same tube was measured again. */
  tube: z.strictObject({ id: idSchema, label: labelSchema }),
  /** The new tube in the file, where that holds several. */
  inSet: idSchema.optional(),
  oldTube: z.enum(['where it helps', 'always', 'never']).default('where it helps'),
  /** Recipes to carry over. */
  recipes: z.array(massesSchema).max(200).default([]),
  /** False: a look, nothing is kept. */
  keep: z.boolean().default(false),
});

export const replacedSchema = z
  .strictObject({
    sentences: z.array(z.string()),
    /** Tinting strength in per cent of the old tube's, and one standard deviation. */
    strengthPercent: z.strictObject({ value: z.number(), sd: z.number().nonnegative() }),
    colours: z.array(
      z.strictObject({ of: z.string(), deltaE00: z.number().nonnegative(), beyondDoubt: z.boolean() }),
    ),
    recipes: z.array(
      z.strictObject({
        before: massesSchema,
        masses: massesSchema,
        outcome: z.enum(['kept', 'near', 'out of reach']),
        deltaE00: z.number().nonnegative(),
        sentence: z.string(),
      }),
    ),
    /** Null where nothing was kept. */
    profileId: idSchema.nullable(),
    tubeId: idSchema,
  })
  .meta({ id: 'ReplacedTube' });

export const mergeRequestSchema = z.strictObject({
  first: idSchema,
  second: idSchema,
  /** Where the whites differ: swatch set with both and one dark tube let down 1:4 with each. */
  bridge: importRequestSchema.optional(),
  /** An id in both: one tube, its fits combined, or two. Absent: combined on one white, apart through a bridge. */
  sameIds: z.enum(['combined', 'apart']).optional(),
  /** The second profile's white in the bridge; absent: its id in the profile. */
  secondWhite: idSchema.optional(),
});

export const rereadRequestSchema = z.strictObject({
  first: importRequestSchema,
  again: importRequestSchema,
});

export const driftSchema = z.strictObject({
  verdict: z.enum(['holds', 'watch', 'measure again']),
  swatches: z.array(
    z.strictObject({ id: z.string(), deltaE00: z.number().nonnegative(), beyondScatter: z.boolean() }),
  ),
  words: z.array(z.string()),
});

export const renewRoutes = {
  replaceTube: route({
    method: 'POST',
    path: '/api/profiles/:profileId/replace',
    summary: "Put a new tube in an old one's place from a short ladder, and say what changes",
    params: z.strictObject({ profileId: idSchema }),
    body: replaceRequestSchema,
    answer: replacedSchema,
  }),
  mergeProfiles: route({
    method: 'POST',
    path: '/api/profiles/merge',
    summary: 'One palette from two profiles: on one white, or through a bridge where the whites differ',
    body: mergeRequestSchema,
    answer: z.strictObject({ paletteId: idSchema, profileId: idSchema, sentences: z.array(z.string()) }),
    status: 201,
  }),
  rereadPalette: route({
    method: 'POST',
    path: '/api/rereads',
    summary: 'Whether a palette still holds, from three swatches read again',
    body: rereadRequestSchema,
    answer: driftSchema,
  }),
};
