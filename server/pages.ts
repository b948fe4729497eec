import { existsSync } from 'node:fs';
import { join } from 'node:path';
import express, { type Express } from 'express';
import { HttpProblem } from './problem.ts';
import { say } from './api/sentences/bench.ts';

/** Serves the built pages. Without a build it says what to run, in one sentence. */
export function servePages(app: Express, folder: string): void {
  app.use(
    express.static(folder, {
      index: 'index.html',
      dotfiles: 'ignore',
      setHeaders: (res, path) => {
        // Built files carry their content's hash in their name; the page itself does not.
        res.setHeader(
          'cache-control',
          path.includes('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
        );
      },
    }),
  );
  app.use((req, res, next) => {
    if (req.method !== 'GET' || req.path.startsWith('/api/')) return next();
    const index = join(folder, 'index.html');
    if (!existsSync(index)) {
      throw new HttpProblem(503, say('pages-not-built'));
    }
    // Screens have addresses of their own; files that are not there have not.
    if (/\.[a-z0-9]{1,6}$/i.test(req.path)) return next();
    res.setHeader('cache-control', 'no-cache');
    res.sendFile(index);
  });
}
