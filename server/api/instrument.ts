import { z } from 'zod';
import { route } from './route.ts';
import { readingFormSchema } from './readings.ts';
import { colourSchema, findingSchema, geometrySchema, timeSchema } from './words.ts';

export const portSchema = z.strictObject({
  path: z.string(),
  /** Words for a person: what it seems to be, or "unknown". */
  label: z.string(),
  vendorId: z.string().nullable(),
  productId: z.string().nullable(),
  serialNumber: z.string().nullable(),
});

export const channelSchema = z.strictObject({
  name: z.string(),
  /** nm; null for a channel that is not a band (tristimulus). */
  centre: z.number().nullable(),
  fwhm: z.number().nullable(),
});

/** One of the things an instrument is set on. */
export const stepSchema = z.strictObject({
  step: z.enum(['dark', 'white tile', 'black trap', 'check tile']),
  state: z.enum(['not done', 'good', 'stale', 'refused']),
  at: timeSchema.nullable(),
  /** What was seen, in one sentence. */
  sentence: z.string(),
  /** A ladder can go on without it. */
  optional: z.boolean(),
});

export const warmUpSchema = z.strictObject({
  state: z.enum(['unknown', 'settling', 'settled', 'drifting']),
  /** Per cent of the white, over the last readings of it. */
  driftPercent: z.number().nullable(),
  sentence: z.string(),
});

export const instrumentSettingsSchema = z.strictObject({
  gain: z.number().positive(),
  /** Integration time, ms. */
  apertureMs: z.number().positive(),
});

export const instrumentSchema = z
  .strictObject({
    state: z.enum(['none', 'connecting', 'ready', 'reading', 'lost', 'fault']),
    transport: z.enum(['serial', 'practice', 'browser']).nullable(),
    port: z.string().nullable(),
    identity: z
      .strictObject({ maker: z.string(), model: z.string(), serial: z.string(), firmware: z.string() })
      .nullable(),
    geometry: geometrySchema.nullable(),
    kind: z.enum(['spectral', 'bands', 'tristimulus']).nullable(),
    channels: z.array(channelSchema),
    settings: instrumentSettingsSchema.nullable(),
    allowed: z
      .strictObject({
        gains: z.array(z.number()),
        apertureMs: z.strictObject({ min: z.number(), max: z.number() }),
      })
      .nullable(),
    checksum: z.boolean(),
    temperature: z.number().nullable(),
    steps: z.array(stepSchema),
    warmUp: warmUpSchema,
    /** What stands in the way now, or is worth knowing. Empty when all is well. */
    findings: z.array(findingSchema),
    /** What to do next, in one sentence. */
    next: z.string(),
    /** Readings can be taken for a ladder. */
    readyToRead: z.boolean(),
    /** How its readings are described to the fit; null until channels and geometry are known. */
    form: readingFormSchema.nullable(),
    /** What the practice instrument lies on now. */
    placedOn: z.string().nullable(),
  })
  .meta({ id: 'Instrument' });
export type Instrument = z.infer<typeof instrumentSchema>;

export const connectSchema = z.discriminatedUnion('transport', [
  z.strictObject({
    transport: z.literal('serial'),
    path: z.string().min(1).max(300),
    baudRate: z.number().int().min(300).max(2_000_000).default(115_200),
    /** Only where the head does not say. */
    geometry: geometrySchema.optional(),
  }),
  /** A port that a page has opened on its own computer (`announceBrowserPort`). */
  z.strictObject({ transport: z.literal('browser'), connection: z.string().min(1).max(100) }),
  z.strictObject({
    transport: z.literal('practice'),
    kind: z.enum(['spectral', 'bands']).default('spectral'),
    /** The same seed gives the same noise, pours and films. */
    seed: z.number().int().min(0).max(4_294_967_295).default(1),
  }),
]);
export type Connect = z.input<typeof connectSchema>;

/** One reading on the bench, as reflectance, not stored with a ladder. */
export const liveReadingSchema = z
  .strictObject({
    at: timeSchema,
    accepted: z.boolean(),
    findings: z.array(findingSchema),
    channels: z.array(channelSchema),
    /** Basic counts (dark-subtracted counts per gain and ms). */
    counts: z.array(z.number()),
    /** Null until the white tile was read. */
    reflectance: z.array(z.number()).nullable(),
    colour: colourSchema.nullable(),
    temperature: z.number().nullable(),
  })
  .meta({ id: 'LiveReading' });
export type LiveReading = z.infer<typeof liveReadingSchema>;

/** The reflectance of the tile itself, where the painter knows it; else the program's own white tile is assumed. */
export const tileSchema = z.strictObject({
  name: z.string().max(200).optional(),
  /** One number for every channel, or one per channel; 0..1.1. */
  reflectance: z
    .union([z.number().min(0).max(1.1), z.array(z.number().min(0).max(1.1)).max(2000)])
    .optional(),
});
export const placeSchema = z.strictObject({
  on: z.enum(['white tile', 'black trap', 'check tile', 'card black', 'card white', 'swatch']),
});

/** A test of the head itself. */
export const headTestSchema = z.strictObject({
  passed: z.boolean(),
  /** Largest departure, as a share, and the channel that has it. */
  worst: z.number(),
  channel: z.string(),
  sentence: z.string(),
});

const answer = instrumentSchema;

export const instrumentRoutes = {
  listPorts: route({
    method: 'GET',
    path: '/api/instrument/ports',
    summary: 'Serial ports a head may be on',
    answer: z.strictObject({ ports: z.array(portSchema), sentence: z.string() }),
  }),
  getInstrument: route({
    method: 'GET',
    path: '/api/instrument',
    summary: 'The instrument as it stands',
    answer,
  }),
  connectInstrument: route({
    method: 'POST',
    path: '/api/instrument/connect',
    summary: 'Connect a head on a port, or the practice instrument',
    body: connectSchema,
    answer,
  }),
  disconnectInstrument: route({
    method: 'POST',
    path: '/api/instrument/disconnect',
    summary: 'Let the instrument go',
    answer,
  }),
  setInstrument: route({
    method: 'PUT',
    path: '/api/instrument/settings',
    summary:
      'Set gain and integration time; both are read back. Dark, white and trap must then be read again',
    body: instrumentSettingsSchema,
    answer,
  }),
  readDark: route({ method: 'POST', path: '/api/instrument/dark', summary: 'Read the dark', answer }),
  readWhiteTile: route({
    method: 'POST',
    path: '/api/instrument/white-tile',
    summary: 'Read the white tile',
    body: tileSchema,
    answer,
  }),
  readBlackTrap: route({
    method: 'POST',
    path: '/api/instrument/black-trap',
    summary: 'Read the black trap',
    answer,
  }),
  readCheckTile: route({
    method: 'POST',
    path: '/api/instrument/check-tile',
    summary: 'Read the check tile and compare it with its earlier readings',
    answer,
  }),
  readOnce: route({
    method: 'POST',
    path: '/api/instrument/read',
    summary: 'Read what lies under the head now; not stored',
    answer: liveReadingSchema,
  }),
  testAperture: route({
    method: 'POST',
    path: '/api/instrument/tests/aperture',
    summary: 'On the white tile: are the counts in proportion to the integration time?',
    answer: headTestSchema,
  }),
  testGain: route({
    method: 'POST',
    path: '/api/instrument/tests/gain',
    summary: 'On the white tile: how far is a step of gain from its nominal size?',
    answer: headTestSchema,
  }),
};
