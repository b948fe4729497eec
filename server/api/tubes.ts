import { z } from 'zod';
import { route } from './route.ts';
import { colourSchema, dateSchema, idSchema, labelSchema, noteSchema, timeSchema } from './words.ts';

export const DRYING_STATES = ['fresh', 'touch-dry', 'dry', 'unknown'] as const;

/** What is known of a tube so far, from nothing to constants. */
export const knownSchema = z.strictObject({
  stage: z.enum(['not measured', 'ladder begun', 'ladder complete', 'constants']),
  ladderId: idSchema.nullable(),
  /** Rungs with enough kept readings, out of all. */
  rungsDone: z.number().int(),
  rungsTotal: z.number().int(),
  /** The fit the constants came from. */
  fitId: idSchema.nullable(),
  /** One line in words on what the constants rest on. */
  trust: z.string().nullable(),
  /** Masstone and the 1:4 tint as measured, else as predicted, else null. */
  masstone: colourSchema.nullable(),
  tint: colourSchema.nullable(),
});

export const tubeSchema = z
  .strictObject({
    id: idSchema,
    paletteId: idSchema,
    label: labelSchema,
    /** Colour Index generic names: PB29, PY43. */
    pigments: z.array(z.string().max(60)).max(20),
    batch: z.string().max(200),
    bought: dateSchema.nullable(),
    drying: z.enum(DRYING_STATES),
    role: z.literal('white').nullable(),
    /** g/ml. */
    density: z.number().positive().max(30).nullable(),
    note: noteSchema,
    /** The practice paint an invented tube stands for; null for real paint. */
    practicePaintId: z.string().nullable(),
    /** The tube this one took the place of. */
    replaces: idSchema.nullable(),
    /** Put away: kept for the record, not offered for mixing. */
    putAway: z.boolean(),
    createdAt: timeSchema,
    known: knownSchema,
    /** Cautions for its pigments, each deferring to the safety data sheet. */
    cautions: z.array(z.string()),
  })
  .meta({ id: 'Tube' });
export type Tube = z.infer<typeof tubeSchema>;

export const newTubeSchema = z.strictObject({
  label: labelSchema,
  pigments: z.array(z.string().trim().min(1).max(60)).max(20).default([]),
  batch: z.string().max(200).default(''),
  bought: dateSchema.nullable().default(null),
  drying: z.enum(DRYING_STATES).default('unknown'),
  /** The first white of a palette becomes its white; naming a second one moves the role only before any ladder. */
  role: z.literal('white').nullable().default(null),
  density: z.number().positive().max(30).nullable().default(null),
  note: noteSchema.default(''),
  practicePaintId: z.string().max(200).nullable().default(null),
  replaces: idSchema.nullable().default(null),
});
export type NewTube = z.input<typeof newTubeSchema>;

export const tubeChangeSchema = z.strictObject({
  label: labelSchema.optional(),
  pigments: z.array(z.string().trim().min(1).max(60)).max(20).optional(),
  batch: z.string().max(200).optional(),
  bought: dateSchema.nullable().optional(),
  drying: z.enum(DRYING_STATES).optional(),
  role: z.literal('white').nullable().optional(),
  density: z.number().positive().max(30).nullable().optional(),
  note: noteSchema.optional(),
  putAway: z.boolean().optional(),
});

/** The invented paints the practice instrument can read. */
export const practicePaintSchema = z.strictObject({
  id: z.string(),
  label: z.string(),
  pigments: z.array(z.string()),
  white: z.boolean(),
});

const params = z.strictObject({ tubeId: idSchema });

export const tubeRoutes = {
  listTubes: route({
    method: 'GET',
    path: '/api/tubes',
    summary: 'The rack: tubes of the current palette, or of the one named',
    query: z.strictObject({ palette: idSchema.optional(), putAway: z.enum(['true', 'false']).optional() }),
    answer: z.array(tubeSchema),
  }),
  getTube: route({
    method: 'GET',
    path: '/api/tubes/:tubeId',
    summary: 'One tube',
    params,
    answer: tubeSchema,
  }),
  createTube: route({
    method: 'POST',
    path: '/api/tubes',
    summary: 'Put a tube in the current palette',
    body: newTubeSchema,
    answer: tubeSchema,
    status: 201,
  }),
  changeTube: route({
    method: 'PATCH',
    path: '/api/tubes/:tubeId',
    summary: 'Change what is written on a tube, or put it away',
    params,
    body: tubeChangeSchema,
    answer: tubeSchema,
  }),
  deleteTube: route({
    method: 'DELETE',
    path: '/api/tubes/:tubeId',
    summary: 'Remove a tube that was never measured; a measured one can only be put away',
    params,
    status: 204,
  }),
  listPracticePaints: route({
    method: 'GET',
    path: '/api/practice-paints',
    summary: 'The invented paints the practice instrument can read',
    answer: z.array(practicePaintSchema),
  }),
};
