import { z } from 'zod';
import { ILLUMINANTS, OBSERVERS } from '../../src/colour/illuminant.ts';
import { geometrySchema } from '../../src/calibrate/swatch-set/schema.ts';

/** The small schemas several resources are written in. */

export const idSchema = z.string().min(1).max(200);
export const labelSchema = z.string().trim().min(1).max(200);
export const noteSchema = z.string().max(2000);
/** ISO 8601, UTC. */
export const timeSchema = z.iso.datetime();
export const dateSchema = z.iso.date();
export const numbersSchema = z.array(z.number()).max(2000);
/** Masses per tube id; only ratios count unless the member says grams. */
export const massesSchema = z.record(idSchema, z.number().nonnegative().max(100_000));

export const labSchema = z.strictObject({ L: z.number(), a: z.number(), b: z.number() });
export const xyzSchema = z.strictObject({ X: z.number(), Y: z.number(), Z: z.number() });

export const illuminantSchema = z.enum(ILLUMINANTS);
export const observerSchema = z.enum(OBSERVERS);
/** The viewing white a colour is stated for. */
export const whiteSchema = z.strictObject({
  illuminant: illuminantSchema.default('D65'),
  observer: observerSchema.default('10deg'),
});

/** A colour as every screen states it. */
export const colourSchema = z.strictObject({
  /** Y of the perfect diffuser is 100. */
  XYZ: xyzSchema,
  Lab: labSchema,
  white: z.strictObject({ illuminant: illuminantSchema, observer: observerSchema }),
  /** Munsell value, 0..10. */
  value: z.number(),
  /** CIELAB units: above zero warm, below zero cool. */
  lean: z.number(),
  leanWord: z.enum(['warm', 'cool', 'neutral']),
  chroma: z.number(),
  /** CSS colours for a screen, mapped into its gamut, and whether it shows the colour itself. */
  display: z.strictObject({ srgb: z.string(), p3: z.string(), inSrgb: z.boolean(), inP3: z.boolean() }),
  /** What it was worked out from; bands give an estimate only, for the eye and for no calculation. */
  from: z.enum(['reading', 'estimate from bands', 'prediction']),
});
export type ColourAnswer = z.infer<typeof colourSchema>;

/** A finding in plain words. `refused` means the reading was not taken. */
export const findingSchema = z.strictObject({
  level: z.enum(['good', 'note', 'warning', 'refused']),
  /** For programs: `saturated`, `drifting`, `room-light`, ... */
  code: z.string(),
  /** For people: what was seen, what is allowed, what to do next. */
  sentence: z.string(),
  /** The channel names it concerns, where it does. */
  channels: z.array(z.string()).optional(),
});
export type Finding = z.infer<typeof findingSchema>;

export { geometrySchema };
export const emptySchema = z.strictObject({});
