import { z } from 'zod';
import { profileSchema } from '../../src/profile/schema.ts';
import { route } from './route.ts';
import { idSchema, timeSchema } from './words.ts';

export const profileSummarySchema = z
  .strictObject({
    id: idSchema,
    paletteId: idSchema,
    title: z.string(),
    createdAt: timeSchema,
    /** The fit it came from; null for an imported one. */
    fitId: idSchema.nullable(),
    origin: z.enum(['fit', 'import']),
    tubeLabels: z.array(z.string()),
    current: z.boolean(),
  })
  .meta({ id: 'ProfileSummary' });
export type ProfileSummary = z.infer<typeof profileSummarySchema>;

/** One tube of two profiles side by side. */
export const tubeDifferenceSchema = z.strictObject({
  tubeId: idSchema,
  label: z.string(),
  status: z.enum(['in both', 'only in the first', 'only in the second']),
  masstoneDeltaE00: z.number().nullable(),
  tintDeltaE00: z.number().nullable(),
  /** Tinting strength of the second in per cent of the first. */
  strengthPercent: z.number().nullable(),
  sentence: z.string(),
});

export const compareSchema = z.strictObject({
  first: idSchema,
  second: idSchema,
  /** Same tube, other id in the second profile. */
  pairs: z.record(idSchema, idSchema).default({}),
});

const params = z.strictObject({ profileId: idSchema });

export const profileRoutes = {
  listProfiles: route({
    method: 'GET',
    path: '/api/profiles',
    summary: 'History of profiles of the current palette, newest first',
    query: z.strictObject({ palette: idSchema.optional() }),
    answer: z.array(profileSummarySchema),
  }),
  getCurrentProfile: route({
    method: 'GET',
    path: '/api/profile',
    summary: 'The palette profile mixing works from now',
    answer: z.strictObject({ summary: profileSummarySchema, profile: profileSchema }),
  }),
  getProfile: route({
    method: 'GET',
    path: '/api/profiles/:profileId',
    summary: 'One palette profile',
    params,
    answer: z.strictObject({ summary: profileSummarySchema, profile: profileSchema }),
  }),
  downloadProfile: route({
    method: 'GET',
    path: '/api/profiles/:profileId/file',
    summary: 'The profile as a file to keep or hand on; without makers unless asked',
    params,
    query: z.strictObject({
      format: z.enum(['json', 'csv', 'cgats']).default('json'),
      makers: z.enum(['true', 'false']).default('false'),
      /** `pigments` puts pigment codes in place of labels, which may hold a maker's name. */
      labels: z.enum(['kept', 'pigments']).default('kept'),
    }),
    answer: z.string(),
    answerType: 'application/octet-stream',
  }),
  makeProfileCurrent: route({
    method: 'POST',
    path: '/api/profiles/:profileId/current',
    summary: 'Mix from this profile',
    params,
    answer: profileSummarySchema,
  }),
  compareProfiles: route({
    method: 'POST',
    path: '/api/profiles/compare',
    summary: 'What changed between two profiles, tube by tube',
    body: compareSchema,
    answer: z.strictObject({ tubes: z.array(tubeDifferenceSchema), sentence: z.string() }),
  }),
};
