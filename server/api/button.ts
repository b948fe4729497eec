import { z } from 'zod';
import { overSchema } from './readings.ts';
import { route } from './route.ts';
import { idSchema } from './words.ts';

/** Where a press of the head's own button belongs: what the page says the head lies on. */
export const buttonSchema = z.strictObject({
  ladderId: idSchema,
  /** A rung, or a half of the bare card. */
  on: z.union([z.strictObject({ rungId: idSchema }), z.strictObject({ side: z.enum(['black', 'white']) })]),
  over: overSchema.default('opaque'),
});
export type ButtonTarget = z.infer<typeof buttonSchema>;

export const buttonRoutes = {
  aimButton: route({
    method: 'PUT',
    path: '/api/instrument/button',
    summary:
      'Say what a press of the head’s own button reads from now on; answered once no earlier press can count for it, and `taken` tells of each press',
    body: buttonSchema,
  }),
  freeButton: route({
    method: 'DELETE',
    path: '/api/instrument/button',
    summary: 'A press of the head’s own button reads for the eye alone again',
  }),
  pressPracticeButton: route({
    method: 'POST',
    path: '/api/instrument/button/press',
    summary: 'Press the button of the practice head, as a hand would',
  }),
};
