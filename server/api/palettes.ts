import { z } from 'zod';
import { route } from './route.ts';
import { geometrySchema, idSchema, labelSchema, noteSchema, timeSchema } from './words.ts';

/** A palette: the set of tubes in use, with one white. One palette is current; lists without an id mean that one. */
export const paletteSchema = z
  .strictObject({
    id: idSchema,
    title: labelSchema,
    /** Invented paints, to be told apart from the painter's own. */
    demo: z.boolean(),
    note: noteSchema,
    whiteTubeId: idSchema.nullable(),
    tubeCount: z.number().int(),
    /** How its first reading was taken; null before there is one. What is typed in later is likely of the same kind. */
    geometry: geometrySchema.nullable(),
    current: z.boolean(),
    createdAt: timeSchema,
  })
  .meta({ id: 'Palette' });
export type Palette = z.infer<typeof paletteSchema>;

export const newPaletteSchema = z.strictObject({ title: labelSchema, note: noteSchema.default('') });
export const paletteChangeSchema = z.strictObject({
  title: labelSchema.optional(),
  note: noteSchema.optional(),
});
const params = z.strictObject({ paletteId: idSchema });

export const paletteRoutes = {
  listPalettes: route({
    method: 'GET',
    path: '/api/palettes',
    summary: 'The palettes of this store',
    answer: z.array(paletteSchema),
  }),
  createPalette: route({
    method: 'POST',
    path: '/api/palettes',
    summary: 'Begin an empty palette and make it current',
    body: newPaletteSchema,
    answer: paletteSchema,
    status: 201,
  }),
  changePalette: route({
    method: 'PATCH',
    path: '/api/palettes/:paletteId',
    summary: 'Rename a palette or note something about it',
    params,
    body: paletteChangeSchema,
    answer: paletteSchema,
  }),
  makePaletteCurrent: route({
    method: 'POST',
    path: '/api/palettes/:paletteId/current',
    summary: 'Make a palette the current one',
    params,
    answer: paletteSchema,
  }),
  createDemoRack: route({
    method: 'POST',
    path: '/api/demo-rack',
    summary: 'Add a palette of invented paints, marked as demo, and make it current',
    answer: paletteSchema,
    status: 201,
  }),
};
