import { z } from 'zod';
import { route } from './route.ts';
import { colourSchema, findingSchema, geometrySchema, idSchema, timeSchema } from './words.ts';

/** A curve with its 95 % band. */
export const bandCurveSchema = z.strictObject({
  value: z.array(z.number()),
  low: z.array(z.number()),
  high: z.array(z.number()),
});

/** A rung as fitted, beside what was read. */
export const rungFitSchema = z.strictObject({
  swatchId: idSchema,
  /** The rung of a ladder on this bench; null for one from a file. */
  rungId: idSchema.nullable(),
  name: z.string(),
  share: z.number(),
  /** On the reading's own channels. */
  measured: z.array(z.number()),
  fitted: z.array(z.number()),
  /** The fitted rung on the 36-sample grid, with its 95 % band. */
  spectrum: bandCurveSchema.nullable(),
  measuredColour: colourSchema.nullable(),
  fittedColour: colourSchema.nullable(),
  deltaE00: z.number(),
  leftOutDeltaE00: z.number().nullable(),
  lnRatioError: z.number(),
  /** "reads like 1:3.4, not 1:4"; null when it agrees. */
  readsLike: z.string().nullable(),
  repeats: z.number().int(),
  mcdm: z.number().nullable(),
});

/** What could be measured next, and what it would buy over the mixtures that hold the tube. */
export const measureNextSchema = z.strictObject({
  /** More spots of the masstone, a new drawdown of it, a tint that is missing, a mixture with another tube. */
  kind: z.enum(['repeat', 'drawdown', 'tint', 'check']),
  /** Tints: parts of white to one of paint. */
  parts: z.number().nullable(),
  /** Checks: the other tube, 1:1 by mass. */
  otherTubeId: idSchema.nullable(),
  otherLabel: z.string().nullable(),
  /** Where it helps most by L*: under 40, between, over 70. */
  range: z.enum(['darks', 'middles', 'lights']),
  /** Mean CIEDE2000 that mixtures there stay within 95 times in 100, now and as expected after it. */
  before: z.number().nonnegative(),
  after: z.number().nonnegative(),
});

/** What the next measurement would buy, most first. */
export const suggestionSchema = z.strictObject({
  rungId: idSchema.nullable(),
  sentence: z.string(),
  /** Expected fall of that doubt over all mixtures with the tube, CIEDE2000; null for advice that is not worked out. */
  gain: z.number().nullable(),
  next: measureNextSchema.nullable(),
});

/** A rung that was not believed and left out of the fit. */
export const notBelievedSchema = z.strictObject({
  swatchIds: z.array(idSchema),
  /** The rung of a ladder on this bench; null for one from a file. */
  rungId: idSchema.nullable(),
  name: z.string(),
  sentence: z.string(),
  /** Parts of white to one of paint as weighed and as it reads, and the chance that the weighing is wrong; null otherwise. */
  weighed: z.number().nullable(),
  readsLike: z.number().nullable(),
  probability: z.number().min(0).max(1).nullable(),
  /** The two masses look to have been noted the wrong way round: weigh the rung again with them exchanged. */
  swapped: z.boolean(),
});

export const tubeFitSchema = z
  .strictObject({
    tubeId: idSchema,
    label: z.string(),
    pigments: z.array(z.string()),
    role: z.literal('white').nullable(),
    K: bandCurveSchema,
    S: bandCurveSchema,
    rungs: z.array(rungFitSchema),
    status: z.enum(['converged', 'stopped']),
    message: z.string(),
    reducedChiSquare: z.number(),
    trust: z.string(),
    warnings: z.array(z.string()),
    /** What to measure next, most useful first. */
    suggestions: z.array(suggestionSchema),
    notBelieved: z.array(notBelievedSchema),
    masstone: colourSchema,
    tint: colourSchema.nullable(),
    findings: z.array(findingSchema),
  })
  .meta({ id: 'TubeFit' });
export type TubeFitAnswer = z.infer<typeof tubeFitSchema>;

export const fitProgressSchema = z.strictObject({
  /** 0..1. */
  done: z.number().min(0).max(1),
  sentence: z.string(),
});

export const fitSchema = z
  .strictObject({
    id: idSchema,
    paletteId: idSchema,
    state: z.enum(['pending', 'running', 'complete', 'failed', 'cancelled']),
    startedAt: timeSchema,
    finishedAt: timeSchema.nullable(),
    progress: fitProgressSchema,
    /** Why it failed, in one sentence. */
    sentence: z.string(),
    profileId: idSchema.nullable(),
    /** Exactly what it came from. */
    readingIds: z.array(idSchema),
    settings: z.looseObject({}),
    /** What was left out and why. */
    leftOut: z.array(z.string()),
  })
  .meta({ id: 'Fit' });
export type Fit = z.infer<typeof fitSchema>;

export const fitResultSchema = z
  .strictObject({
    fit: fitSchema,
    wavelengths: z.array(z.number()),
    geometry: geometrySchema,
    /** Names of the reading's channels: wavelengths, bands or X, Y, Z. */
    channels: z.array(z.string()),
    surface: z.looseObject({}),
    tubes: z.array(tubeFitSchema),
  })
  .meta({ id: 'FitResult' });
export type FitResult = z.infer<typeof fitResultSchema>;

export const startFitSchema = z.strictObject({
  paletteId: idSchema.optional(),
  /** Readings of one form go into one fit; absent: the form with the most readings. */
  formId: idSchema.optional(),
});

const params = z.strictObject({ fitId: idSchema });

export const fitRoutes = {
  listFits: route({
    method: 'GET',
    path: '/api/fits',
    summary: 'Fits of the current palette, newest first',
    query: z.strictObject({ palette: idSchema.optional() }),
    answer: z.array(fitSchema),
  }),
  startFit: route({
    method: 'POST',
    path: '/api/fits',
    summary: 'Fit the constants of a palette; progress comes as events',
    body: startFitSchema,
    answer: fitSchema,
    status: 202,
  }),
  getFit: route({
    method: 'GET',
    path: '/api/fits/:fitId',
    summary: 'How a fit stands',
    params,
    answer: fitSchema,
  }),
  getFitResult: route({
    method: 'GET',
    path: '/api/fits/:fitId/result',
    summary: 'Curves, rungs predicted and measured, and evidence of a complete fit',
    params,
    answer: fitResultSchema,
  }),
  cancelFit: route({
    method: 'DELETE',
    path: '/api/fits/:fitId',
    summary: 'Stop a running fit',
    params,
    answer: fitSchema,
  }),
};
