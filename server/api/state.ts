import { z } from 'zod';
import { instrumentSchema } from './instrument.ts';
import { paletteSchema } from './palettes.ts';
import { route } from './route.ts';
import { idSchema, timeSchema, whiteSchema } from './words.ts';

/** What the painter chose once and for all screens. */
export const settingsSchema = z
  .strictObject({
    white: whiteSchema,
    scaleResolution: z.number().positive().max(10),
    smallestPour: z.number().positive().max(100),
    repeats: z.number().int().min(1).max(20),
    theme: z.enum(['middle', 'light', 'dark', 'system']),
    language: z.enum(['en', 'de']),
    speech: z.boolean(),
    tone: z.boolean(),
  })
  .meta({ id: 'Settings' });
export type Settings = z.infer<typeof settingsSchema>;
export const DEFAULT_SETTINGS: Settings = {
  white: { illuminant: 'D65', observer: '10deg' },
  scaleResolution: 0.01,
  smallestPour: 0.5,
  repeats: 3,
  theme: 'middle',
  language: 'en',
  speech: false,
  tone: true,
};
export const settingsChangeSchema = settingsSchema.partial();

export const healthSchema = z.strictObject({
  ok: z.literal(true),
  name: z.literal('tintladder'),
  version: z.string(),
  startedAt: timeSchema,
});

/** Everything a page needs at its first paint. */
export const stateSchema = z
  .strictObject({
    version: z.string(),
    /** No palette yet: offer the demo rack and the practice instrument. */
    firstStart: z.boolean(),
    palettes: z.array(paletteSchema),
    currentPaletteId: idSchema.nullable(),
    currentProfileId: idSchema.nullable(),
    /** The ladder that was open when the program last stopped, to be gone on with. */
    openLadderIds: z.array(idSchema),
    instrument: instrumentSchema,
    settings: settingsSchema,
    storeFile: z.string(),
  })
  .meta({ id: 'State' });
export type State = z.infer<typeof stateSchema>;

export const stateRoutes = {
  health: route({ method: 'GET', path: '/api/health', summary: 'The program answers', answer: healthSchema }),
  state: route({
    method: 'GET',
    path: '/api/state',
    summary: 'Everything a page needs at its first paint',
    answer: stateSchema,
  }),
  getSettings: route({
    method: 'GET',
    path: '/api/settings',
    summary: 'The settings',
    answer: settingsSchema,
  }),
  changeSettings: route({
    method: 'PATCH',
    path: '/api/settings',
    summary: 'Change some settings',
    body: settingsChangeSchema,
    answer: settingsSchema,
  }),
  backup: route({
    method: 'GET',
    path: '/api/backup',
    summary: 'The whole store as one SQLite file, taken by its own backup call',
    answer: z.string(),
    answerType: 'application/octet-stream',
  }),
  openapi: route({
    method: 'GET',
    path: '/api/openapi.json',
    summary: 'This interface as an OpenAPI 3.1 document',
    answer: z.looseObject({ openapi: z.string() }),
  }),
};
