import { z } from 'zod';
import { portEventSchema } from './browser-ports.ts';
import { fitSchema } from './fits.ts';
import { instrumentSchema, liveReadingSchema } from './instrument.ts';
import { readingSchema } from './readings.ts';
import { route } from './route.ts';
import { findingSchema, idSchema } from './words.ts';

/**
 * Server-sent events of `/api/events`: the SSE `event:` field is `type`, the `data:` field is the whole object as
 * JSON. After (re)connecting, `hello` comes first; fetch `/api/state` then.
 */
export const eventSchema = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('hello'), version: z.string() }),
  z.strictObject({ type: z.literal('instrument'), instrument: instrumentSchema }),
  /** Every reading the head takes, kept or not. */
  z.strictObject({ type: z.literal('reading'), reading: liveReadingSchema }),
  /** The button on the head was pressed and a reading taken for the open rung. */
  z.strictObject({
    type: z.literal('taken'),
    ladderId: idSchema,
    rungId: idSchema.nullable(),
    reading: readingSchema.nullable(),
    findings: z.array(findingSchema),
  }),
  /** Something of the ladder changed: fetch it again. */
  z.strictObject({ type: z.literal('ladder'), ladderId: idSchema }),
  /** For the page that holds this port: what the driver sends to its head. */
  portEventSchema,
  z.strictObject({ type: z.literal('fit'), fit: fitSchema }),
  /** Tubes, palettes, checks, profiles or settings changed: fetch that list again. */
  z.strictObject({
    type: z.literal('changed'),
    what: z.enum(['tubes', 'palettes', 'checks', 'profiles', 'settings', 'ladders', 'pairing']),
  }),
]);
export type ServerEvent = z.infer<typeof eventSchema>;
export type ServerEventType = ServerEvent['type'];

export const eventRoutes = {
  events: route({
    method: 'GET',
    path: '/api/events',
    summary: 'Live events (server-sent events)',
    answer: eventSchema,
    answerType: 'text/event-stream',
  }),
};
