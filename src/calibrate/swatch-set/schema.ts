import * as z from 'zod';
import { geometrySchema, noiseSchema, weighingSchema } from './terms.ts';

export { GEOMETRIES, type Geometry, type ReadingNoise, type Weighing, geometrySchema } from './terms.ts';

/**
 * The swatch set: what was painted and what was read, the input of a fit (docs/swatch-set.md).
 * Rules that JSON Schema cannot hold (ids that must exist, lengths that must agree) are in read.ts.
 */

const id = z.string().min(1).max(200);
const finite = z.number();
const positive = z.number().positive();

export const responseSchema = z.strictObject({
  wavelengths: z.array(positive).min(2).max(2000),
  rows: z.array(z.array(finite).max(2000)).min(1).max(2000),
});

const instrumentCommon = {
  geometry: geometrySchema,
  geometryNote: z.string().max(2000).optional(),
  name: z.string().max(200).optional(),
  response: responseSchema.optional(),
};

export const bandSchema = z.strictObject({
  name: z.string().max(60).optional(),
  centre: positive,
  fwhm: positive,
});

export const instrumentSchema = z.discriminatedUnion('kind', [
  z.looseObject({
    ...instrumentCommon,
    kind: z.literal('spectral'),
    wavelengths: z.array(positive).min(2).max(2000),
  }),
  z.looseObject({
    ...instrumentCommon,
    kind: z.literal('bands'),
    bands: z.array(bandSchema).min(1).max(200),
  }),
  z.looseObject({
    ...instrumentCommon,
    kind: z.literal('tristimulus'),
    illuminant: z.string().max(40),
    observer: z.string().max(40),
    scale: z.string().max(200).optional(),
  }),
]);
export type InstrumentDescription = z.infer<typeof instrumentSchema>;

export const backingSchema = z.looseObject({ id, reflectance: z.array(finite).min(1).max(2000) });

export const swatchTubeSchema = z.looseObject({
  id,
  label: z.string().max(200).optional(),
  pigments: z.array(z.string().max(60)).max(20).optional(),
  role: z.literal('white').optional(),
  density: positive.max(30).optional(),
});

const massesSchema = z.record(id, z.number().nonnegative());

export const madeSchema = z
  .array(
    z.union([z.strictObject({ from: id, grams: positive }), z.strictObject({ tube: id, grams: positive })]),
  )
  .min(1)
  .max(20);

export const filmSchema = z.union([
  z.literal('opaque'),
  z.strictObject({ thickness: positive.nullable(), drawdown: id }),
]);
export type Film = z.infer<typeof filmSchema>;

const paintedCommon = {
  id,
  masses: massesSchema.optional(),
  made: madeSchema.optional(),
  film: filmSchema.default('opaque'),
  backing: id.optional(),
  note: z.string().max(2000).optional(),
  ageDays: z.number().nonnegative().optional(),
};

const readingsSchema = z.array(z.array(finite).min(1).max(2000)).min(1).max(1000);

export const swatchSchema = z.looseObject({
  ...paintedCommon,
  readings: readingsSchema,
  /** Id of a swatch that is this same film, read earlier. A fit takes the earlier reading; the two tell the drying shift. */
  again: id.optional(),
});
export const checkSchema = z.looseObject({
  ...paintedCommon,
  readings: readingsSchema.optional(),
  truth: z.array(finite).min(1).max(2000).optional(),
});

export const swatchSetSchema = z.looseObject({
  format: z.literal('swatch-set'),
  version: z.literal(1),
  title: z.string().max(500).optional(),
  source: z.string().max(2000).optional(),
  instrument: instrumentSchema,
  weighing: weighingSchema.optional(),
  noise: noiseSchema.optional(),
  backings: z.array(backingSchema).max(10_000).default([]),
  tubes: z.array(swatchTubeSchema).min(1).max(200),
  swatches: z.array(swatchSchema).max(10_000).default([]),
  checks: z.array(checkSchema).max(10_000).default([]),
});

export type SwatchSet = z.infer<typeof swatchSetSchema>;
export type Swatch = SwatchSet['swatches'][number];
export type Check = SwatchSet['checks'][number];
export type SwatchTube = SwatchSet['tubes'][number];
export type Backing = SwatchSet['backings'][number];
