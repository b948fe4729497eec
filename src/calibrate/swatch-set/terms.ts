import * as z from 'zod';

/** Terms that a swatch set and a palette profile share: how the instrument looks, how the scale and the reading err. */

/** How the instrument lights and looks. It picks the surface equation, so it is never guessed. */
export const GEOMETRIES = ['45/0', 'd/8 specular included', 'd/8 specular excluded'] as const;
export const geometrySchema = z.enum(GEOMETRIES);
export type Geometry = z.infer<typeof geometrySchema>;

export const weighingSchema = z.union([
  z.strictObject({ relativeSigma: z.number().min(0).max(1) }),
  z.strictObject({ resolution: z.number().positive().max(1000) }),
]);
export type Weighing = z.infer<typeof weighingSchema>;

export const noiseSchema = z.strictObject({
  sigma: z.number().nonnegative().max(1).optional(),
  relative: z.number().nonnegative().max(1).optional(),
});
export type ReadingNoise = z.infer<typeof noiseSchema>;
