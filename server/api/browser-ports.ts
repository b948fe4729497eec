import { z } from 'zod';
import { route } from './route.ts';

const connection = z.string().min(1).max(100);
/** One line of the protocol, without its end; the longest is the driver's own limit (hardware-notes/protocol.md). */
const lineSchema = z.string().max(4096);

/** What a page is to do with the port it holds. */
export const portEventSchema = z.strictObject({
  type: z.literal('port'),
  connection,
  do: z.enum(['send', 'discard', 'close']),
  /** What to send, without its end; empty otherwise. */
  line: z.string().max(255),
});

export const browserPortRoutes = {
  announceBrowserPort: route({
    method: 'POST',
    path: '/api/instrument/browser-ports',
    summary:
      'A page has opened a port of its own computer (Web Serial) for the bench to use; connect it then',
    body: z.strictObject({ name: z.string().min(1).max(200) }),
    answer: z.strictObject({ connection }),
    status: 201,
  }),
  hearBrowserPort: route({
    method: 'POST',
    path: '/api/instrument/browser-ports/:connection/heard',
    summary: 'Hand on what the head sent over a page’s port, or that its cable is out',
    params: z.strictObject({ connection }),
    body: z.strictObject({
      lines: z.array(lineSchema).max(1000).default([]),
      /** A run of bytes longer than a line may be was thrown away. */
      overlong: z.boolean().default(false),
      gone: z.boolean().default(false),
    }),
  }),
};
