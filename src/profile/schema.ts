import * as z from 'zod';
import { geometrySchema, noiseSchema, weighingSchema } from '../calibrate/swatch-set/terms.ts';
import { GRID_NM, GRID_SIZE } from '../colour/grid.ts';

/**
 * The palette profile, version 1: everything another program needs to mix these tubes (docs/profile-format.md).
 * All spectra lie on `wavelengths`; K and S are per unit mass of tube paint, relative to the white's scattering.
 * Rules across members (the white exists, factor columns agree) are in read.ts.
 */

const gridArray = z.array(z.number()).length(GRID_SIZE);
/** One column of a covariance factor: 36 numbers for ln K, then 36 for ln S. */
const factorColumn = z.array(z.number()).length(2 * GRID_SIZE);

export const surfaceSchema = z.strictObject({
  /** Which surface equation (docs/method.md): it follows from the geometry. */
  form: z.enum(['specular-included', 'specular-excluded', '45/0']),
  refractiveIndex: z.number().min(1).max(3),
  /** Share of the light reflected at the surface at the angle of lighting. */
  k1: z.number().min(0).max(0.2),
  /** Share of diffuse light reflected back inside at the surface. */
  k2: z.number().min(0).max(0.99),
  /** 45/0 only: (1-F45)(1-F0)/n^2. */
  escape: z.number().positive().max(1).optional(),
  /** Added to every reading: haze of a matte or sunk film. */
  haze: z.number().min(-0.05).max(0.1),
  /** Standard deviations where a constant was estimated from the readings; absent where it was assumed. */
  estimated: z
    .strictObject({
      k1: z.number().nonnegative().optional(),
      k2: z.number().nonnegative().optional(),
      haze: z.number().nonnegative().optional(),
    })
    .optional(),
});
export type SurfaceConstants = z.infer<typeof surfaceSchema>;

export const evidenceSchema = z.looseObject({
  /** What was read: it sets what the constants can be trusted with. */
  readings: z.enum(['spectral', 'bands', 'tristimulus']),
  rungs: z.array(
    z.looseObject({
      id: z.string(),
      /** Weighed share of this tube, 0..1 by mass. */
      share: z.number().min(0).max(1),
      /** CIEDE2000 (D65/10deg) of the fitted rung against its mean reading. */
      deltaE00: z.number().nonnegative(),
      /** The same with this rung left out of the fit; absent where too few rungs remain. */
      leftOutDeltaE00: z.number().nonnegative().optional(),
      /** ln of (ratio it reads like / ratio weighed). */
      lnRatioError: z.number(),
      /** Repeats kept, and their mean colour difference from the mean (ASTM E2214's MCDM, CIEDE2000). */
      repeats: z.number().int().min(1),
      mcdm: z.number().nonnegative().optional(),
    }),
  ),
  reducedChiSquare: z.number().nonnegative(),
  status: z.enum(['converged', 'stopped']),
  message: z.string(),
  iterations: z.number().int().nonnegative(),
  /** One honest line in words. */
  trust: z.string(),
  /** Warnings in words: a rung that disagrees, a film that does not hide. */
  warnings: z.array(z.string()).default([]),
});
export type TubeEvidence = z.infer<typeof evidenceSchema>;

export const profileTubeSchema = z.looseObject({
  id: z.string().min(1).max(200),
  label: z.string().max(200),
  pigments: z.array(z.string().max(60)).max(20),
  role: z.literal('white').optional(),
  /** Only where the user asked for it: whose tube it is. Left out of an export by default. */
  maker: z.string().max(200).optional(),
  batch: z.string().max(200).optional(),
  /** g/ml, where known: needed only to read parts by volume. */
  density: z.number().positive().max(30).optional(),
  K: gridArray,
  S: gridArray,
  /** ln K and ln S deviate by own . u + shared . v, u and v standard normal; v is one for the whole profile. */
  covariance: z.strictObject({
    own: z.array(factorColumn).max(4 * GRID_SIZE),
    shared: z.array(factorColumn).max(4 * GRID_SIZE),
  }),
  evidence: evidenceSchema.optional(),
  provenance: z.looseObject({}).optional(),
});
export type ProfileTube = z.infer<typeof profileTubeSchema>;

const byShared = z.array(z.number()).max(4 * GRID_SIZE);
export const frameDoubtSchema = z.strictObject({
  k1: byShared.optional(),
  k2: byShared.optional(),
  escape: byShared.optional(),
  haze: byShared.optional(),
  crowding: byShared.optional(),
});

export const profileSchema = z.looseObject({
  format: z.literal('palette-profile'),
  version: z.literal(1),
  title: z.string().max(500).optional(),
  created: z.iso.datetime(),
  generator: z.strictObject({ name: z.string(), version: z.string() }),
  basis: z.literal('mass'),
  wavelengths: z.array(z.number()).length(GRID_SIZE),
  geometry: geometrySchema,
  surface: surfaceSchema,
  white: z.string(),
  tubes: z.array(profileTubeSchema).min(1).max(200),
  /**
   * What the equations themselves miss: every mixture's ln(K/S) deviates by a smooth random curve of this standard
   * deviation, drawn afresh for each mixture, with correlation exp(-(dlambda/correlationNm)^2 / 2).
   */
  discrepancy: z.strictObject({
    sdLnKS: gridArray,
    correlationNm: z.number().positive(),
    /** Standard deviation of surface haze from film to film, reflectance factor. Absent: 0. */
    sdHaze: z.number().min(0).max(0.1).optional(),
  }),
  /** A gram of the white at a share c of a mixture scatters 1 + crowding (1 - c) times as in its masstone. Absent: 0. */
  crowding: z.number().min(-0.9).max(10).optional(),
  /**
   * How doubtful surface constants and crowding go with the shared numbers v: the constant deviates by the sum of
   * entry j times v_j, and the tubes' shared columns hold what they do with it. Absent: taken as known.
   */
  frameDoubt: frameDoubtSchema.optional(),
  weighing: weighingSchema.optional(),
  noise: noiseSchema.optional(),
  /** Scattering of the white per micrometre of wet film, where a thickness was known. */
  whiteScatteringPerMicrometre: z
    .strictObject({ value: z.number().positive(), relativeSigma: z.number().nonnegative() })
    .optional(),
  provenance: z.looseObject({}).optional(),
});
export type PaletteProfile = z.infer<typeof profileSchema>;

/** The grid every version 1 profile is on. */
export const PROFILE_WAVELENGTHS: readonly number[] = GRID_NM;
