import { z } from 'zod';
import { route } from './route.ts';
import { idSchema, timeSchema } from './words.ts';

export const pairingSchema = z
  .strictObject({
    /** Off unless the program was started with --pair: then it listens on this computer alone. */
    on: z.boolean(),
    /** Where a phone reaches the bench; empty when off. */
    address: z.string(),
    /** The code on show; null when none was asked for, or it is used, over or tried out. */
    code: z
      .strictObject({
        code: z.string(),
        expiresAt: timeSchema,
        triesLeft: z.number().int().positive(),
        /** The address with the code behind `#`, which no browser sends to a server. */
        url: z.string(),
        /** The same as a QR code: one SVG path in a square of `size` units. */
        qr: z.strictObject({ size: z.number().int().positive(), path: z.string() }),
      })
      .nullable(),
    phones: z.array(
      z.strictObject({
        id: idSchema,
        pairedAt: timeSchema,
        expiresAt: timeSchema,
        /** It has the bench open now. */
        here: z.boolean(),
      }),
    ),
  })
  .meta({ id: 'Pairing' });

/** Asked from this computer alone, but for `pairPhone`, which is the one thing a phone may ask unpaired. */
export const pairingRoutes = {
  getPairing: route({
    method: 'GET',
    path: '/api/pairing',
    summary: 'Whether phones may be paired, the code on show, and the phones paired (this computer only)',
    answer: pairingSchema,
  }),
  showPairingCode: route({
    method: 'POST',
    path: '/api/pairing/code',
    summary: 'Show a new one-time code; the one before it ends (this computer only)',
    answer: pairingSchema,
  }),
  endPairingCode: route({
    method: 'DELETE',
    path: '/api/pairing/code',
    summary: 'End the code on show (this computer only)',
    answer: pairingSchema,
  }),
  pairPhone: route({
    method: 'POST',
    path: '/api/pairing/phones',
    summary: 'Pair this phone with a code; its token comes as a cookie (network address only)',
    body: z.strictObject({ code: z.string().max(64) }),
  }),
  letGoOfPhone: route({
    method: 'DELETE',
    path: '/api/pairing/phones/:phoneId',
    summary: 'Let go of a paired phone (this computer only)',
    params: z.strictObject({ phoneId: idSchema }),
    answer: pairingSchema,
  }),
};
