import { z } from 'zod';
import { bandSchema, geometrySchema, responseSchema } from '../../src/calibrate/swatch-set/schema.ts';
import { illuminantSchema, observerSchema, colourSchema, idSchema, timeSchema } from './words.ts';

/** How a typed or read reading was obtained; readings of one fit share one description. */
export const readingFormSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('spectral'),
    geometry: geometrySchema,
    name: z.string().max(200).optional(),
    wavelengths: z.array(z.number().positive()).min(2).max(2000),
    response: responseSchema.optional(),
  }),
  z.strictObject({
    kind: z.literal('bands'),
    geometry: geometrySchema,
    name: z.string().max(200).optional(),
    bands: z.array(bandSchema).min(1).max(200),
    response: responseSchema.optional(),
  }),
  z.strictObject({
    kind: z.literal('tristimulus'),
    geometry: geometrySchema,
    name: z.string().max(200).optional(),
    illuminant: illuminantSchema,
    observer: observerSchema,
    response: responseSchema.optional(),
  }),
]);
export type ReadingForm = z.infer<typeof readingFormSchema>;

/**
 * A reading as a person types it. Geometry and, for colours, illuminant and observer are always named; a scale that is
 * left out is told from the values where that is certain, else asked for (a problem with `choices`).
 * XYZ in `100` has Y of the perfect diffuser at 100.
 */
export const typedReadingSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('reflectance'),
    geometry: geometrySchema,
    scale: z.enum(['0-1', 'percent']).optional(),
    /** Regular or not, ascending. */
    wavelengths: z.array(z.number().positive()).min(2).max(2000),
    values: z.array(z.number()).min(2).max(2000),
  }),
  z.strictObject({
    kind: z.literal('bands'),
    geometry: geometrySchema,
    scale: z.enum(['0-1', 'percent']).optional(),
    bands: z.array(bandSchema).min(1).max(200),
    values: z.array(z.number()).min(1).max(200),
  }),
  z.strictObject({
    kind: z.literal('XYZ'),
    geometry: geometrySchema,
    scale: z.enum(['100', '1']).optional(),
    illuminant: illuminantSchema,
    observer: observerSchema,
    values: z.array(z.number()).length(3),
  }),
  z.strictObject({
    kind: z.literal('Lab'),
    geometry: geometrySchema,
    illuminant: illuminantSchema,
    observer: observerSchema,
    values: z.array(z.number()).length(3),
  }),
]);
export type TypedReading = z.infer<typeof typedReadingSchema>;

/** What lies under the film where it was read. `opaque` says the film hides whatever is under it. */
export const overSchema = z.enum(['opaque', 'black', 'white']);

/** One reading as stored: never changed, only kept, sent back or taken back. */
export const readingSchema = z
  .strictObject({
    id: idSchema,
    takenAt: timeSchema,
    /** Age of the film when it was read, days; null where nobody said when it was drawn down. */
    ageDays: z.number().nonnegative().nullable(),
    /** Read again at a later sitting: it tells how the film dried and is not averaged with the rung's own readings. */
    again: z.boolean(),
    source: z.enum(['head', 'practice', 'typed', 'file']),
    formId: idSchema,
    kind: z.enum(['spectral', 'bands', 'tristimulus']),
    over: overSchema,
    /** Reflectance factor per channel, 0..1 (tristimulus: fraction of the perfect diffuser per channel). */
    values: z.array(z.number()),
    /** kept: goes into the fit. sent back: outside the scatter allowed. taken back: undone by the painter. */
    state: z.enum(['kept', 'sent back', 'taken back']),
    /** Why, in one sentence; empty for a plain kept reading. */
    reason: z.string(),
    decidedBy: z.enum(['program', 'painter']),
    colour: colourSchema.nullable(),
  })
  .meta({ id: 'Reading' });
export type Reading = z.infer<typeof readingSchema>;

/** Days from drawing the film down to this reading, where it was read before it is handed in. */
const ageSchema = z.number().nonnegative().max(36_500);

/** A reading as a file holds it. */
export const fileEntry = {
  fileName: z.string().max(300),
  /** CSV, CGATS.17 text or CxF3; the first sample is taken unless one is named. */
  text: z.string().max(5_000_000),
  sample: z.string().max(300).optional(),
  /** Answers to what the file leaves open. */
  geometry: geometrySchema.optional(),
  scale: z.enum(['fraction', 'per cent']).optional(),
  decimalComma: z.boolean().optional(),
};

/** Ask the head to read, or hand in what was read elsewhere. */
export const takeReadingSchema = z.discriminatedUnion('source', [
  z.strictObject({ source: z.literal('head'), over: overSchema.default('opaque') }),
  z.strictObject({
    source: z.literal('typed'),
    over: overSchema.default('opaque'),
    ageDays: ageSchema.optional(),
    reading: typedReadingSchema,
  }),
  z.strictObject({
    source: z.literal('file'),
    over: overSchema.default('opaque'),
    ageDays: ageSchema.optional(),
    ...fileEntry,
  }),
]);
export type TakeReading = z.input<typeof takeReadingSchema>;
