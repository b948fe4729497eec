import { z } from 'zod';
import { route } from './route.ts';
import { geometrySchema, idSchema, labelSchema } from './words.ts';

/** A file as the page hands it over: its text, never a path. */
export const importRequestSchema = z.strictObject({
  fileName: z.string().max(300),
  text: z.string().max(20_000_000),
  /** The JSON a CSV of this program has beside it. */
  sidecar: z.string().max(2_000_000).optional(),
  /** Answers to what the preview assumed; absent: as assumed. */
  assume: z
    .strictObject({
      geometry: geometrySchema.optional(),
      white: idSchema.optional(),
      scale: z.enum(['fraction', 'per cent']).optional(),
      decimalComma: z.boolean().optional(),
    })
    .optional(),
});
export type ImportRequest = z.input<typeof importRequestSchema>;

export const assumptionSchema = z.strictObject({
  /** The member of `assume` that changes it; null where nothing can. */
  member: z.enum(['geometry', 'white', 'scale', 'decimalComma']).nullable(),
  sentence: z.string(),
  value: z.string(),
  options: z.array(z.string()),
});

export const importPreviewSchema = z
  .strictObject({
    kind: z.enum(['swatch set', 'palette profile']),
    title: z.string(),
    source: z.string(),
    geometry: geometrySchema,
    readings: z.enum(['spectral', 'bands', 'tristimulus']).nullable(),
    tubes: z.array(
      z.strictObject({
        id: idSchema,
        label: z.string(),
        pigments: z.array(z.string()),
        swatches: z.number().int(),
      }),
    ),
    white: idSchema.nullable(),
    swatchCount: z.number().int(),
    checkCount: z.number().int(),
    readingCount: z.number().int(),
    /** What was assumed because the file did not say; never silent. */
    assumptions: z.array(assumptionSchema),
    warnings: z.array(z.string()),
  })
  .meta({ id: 'ImportPreview' });
export type ImportPreview = z.infer<typeof importPreviewSchema>;

export const importedSchema = z.strictObject({
  paletteId: idSchema,
  title: labelSchema,
  tubeIds: z.array(idSchema),
  swatchCount: z.number().int(),
  readingCount: z.number().int(),
  checkCount: z.number().int(),
  /** Set when the file was a palette profile. */
  profileId: idSchema.nullable(),
});

export const importRoutes = {
  previewImport: route({
    method: 'POST',
    path: '/api/imports/preview',
    summary: 'Read a file without keeping anything, and list what was assumed',
    body: importRequestSchema,
    answer: importPreviewSchema,
  }),
  importFile: route({
    method: 'POST',
    path: '/api/imports',
    summary: 'Import a swatch set or a palette profile as a palette of its own and make it current',
    body: importRequestSchema,
    answer: importedSchema,
    status: 201,
  }),
  exportSwatchSet: route({
    method: 'GET',
    path: '/api/palettes/:paletteId/swatch-set',
    summary: 'Everything read for a palette, as a swatch set',
    params: z.strictObject({ paletteId: idSchema }),
    query: z.strictObject({ form: idSchema.optional() }),
    answer: z.looseObject({ format: z.literal('swatch-set') }),
  }),
  downloadReadings: route({
    method: 'GET',
    path: '/api/palettes/:paletteId/readings-file',
    summary: 'Everything read for a palette as a file in an open format',
    params: z.strictObject({ paletteId: idSchema }),
    query: z.strictObject({
      format: z.enum(['json', 'csv', 'cgats', 'cxf']).default('json'),
      form: idSchema.optional(),
    }),
    answer: z.string(),
    answerType: 'application/octet-stream',
  }),
};
