import { z } from 'zod';
import { route } from './route.ts';
import { headTestSchema, instrumentSchema } from './instrument.ts';
import { numbersSchema, timeSchema } from './words.ts';

/** What a test in several steps has so far; `verdict` comes with the last step. */
export const guidedTestSchema = z.strictObject({
  verdict: headTestSchema.nullable(),
  /** What to do next, in one sentence. */
  next: z.string(),
});
export type GuidedTest = z.infer<typeof guidedTestSchema>;

const limitsSchema = z.strictObject({
  mean: z.number(),
  lower: z.number(),
  upper: z.number(),
  meanRange: z.number(),
  upperRange: z.number(),
  points: z.number().int(),
  /** Twenty sessions or more stand behind them. */
  firm: z.boolean(),
});

/** The check tile over its sessions: individuals and moving ranges (NIST/SEMATECH e-Handbook 6.3.2.2). */
export const tileHistorySchema = z
  .strictObject({
    sessions: z.array(timeSchema),
    /** Null while there are too few sessions for limits. */
    steady: z.boolean().nullable(),
    sentence: z.string(),
    charts: z.array(
      z.strictObject({
        /** "level", "balance" or a channel's name. */
        name: z.string(),
        /** One a session, oldest first. */
        values: numbersSchema,
        /** Distances between neighbours: one fewer. */
        ranges: numbersSchema,
        /** From all sessions but the last. */
        limits: limitsSchema,
        signal: z.enum(['inside', 'above', 'below', 'jump']),
      }),
    ),
  })
  .meta({ id: 'TileHistory' });
export type TileHistory = z.infer<typeof tileHistorySchema>;

/** What is known of the connected head from its own readings. */
export const headRecordSchema = z
  .strictObject({
    instrument: z.string(),
    tests: z.array(
      z.strictObject({
        test: z.enum(['aperture', 'gain', 'superposition', 'lift', 'light leak']),
        passed: z.boolean(),
        sentence: z.string(),
        at: timeSchema,
      }),
    ),
    /** Measured steps of gain; a change of gain along them keeps the white. */
    gainSteps: z.array(
      z.strictObject({
        fromGain: z.number(),
        toGain: z.number(),
        /** Basic counts at `toGain` over those at `fromGain`, per channel: 1 where the nominal gain is true. */
        ratios: numbersSchema,
        at: timeSchema,
      }),
    ),
    noise: z
      .strictObject({
        /** Standard deviation of one reading: sqrt(sigma^2 + (relative R)^2). */
        sigma: z.number(),
        relative: z.number(),
        degreesOfFreedom: z.number().int(),
        sentence: z.string(),
      })
      .nullable(),
    /** What the channels really see (filter times lamp), beside what their catalogue says. */
    bands: z.array(
      z.strictObject({
        name: z.string(),
        catalogueNm: z.number().nullable(),
        centreNm: z.number(),
        fwhmNm: z.number(),
        /** Signal on a perfect diffuser as a share of the strongest channel's; null where the head tells no curves. */
        strength: z.number().nullable(),
      }),
    ),
    checkTile: tileHistorySchema,
  })
  .meta({ id: 'HeadRecord' });
export type HeadRecord = z.infer<typeof headRecordSchema>;

export const headRecordRoutes = {
  getHeadRecord: route({
    method: 'GET',
    path: '/api/instrument/record',
    summary: 'What is known of the connected head: tests, gain steps, noise, bands, check tile',
    answer: headRecordSchema,
  }),
  getTileHistory: route({
    method: 'GET',
    path: '/api/instrument/check-tile',
    summary: 'The check tile over its sessions, with control limits once there are enough',
    answer: tileHistorySchema,
  }),
  watchWarmUp: route({
    method: 'POST',
    path: '/api/instrument/warm-up',
    summary: 'Read the white tile once more to see whether the lamp has settled; the white in use stays',
    answer: instrumentSchema,
  }),
  testSuperposition: route({
    method: 'POST',
    path: '/api/instrument/tests/superposition',
    summary:
      'Two lamps apart and together: first the head’s own lamp alone, then with a second steady light on',
    body: z.strictObject({ secondLight: z.enum(['off', 'on']) }),
    answer: guidedTestSchema,
  }),
  testLift: route({
    method: 'POST',
    path: '/api/instrument/tests/lift',
    summary:
      'Read the tile on a shim of this height; height 0 begins anew, two heights or more give a verdict',
    body: z.strictObject({ shimMm: z.number().min(0).max(5) }),
    answer: guidedTestSchema,
  }),
  testLightLeak: route({
    method: 'POST',
    path: '/api/instrument/tests/light-leak',
    summary: 'Lamp off, head on a swatch: does more light get in than on the black trap?',
    answer: headTestSchema,
  }),
};
