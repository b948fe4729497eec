import type { Server } from 'node:http';
import type { Express } from 'express';

/** Pages straight from their sources, by the page's own build tool; for development only. */
export function developmentPages(app: Express, server: Server): void {
  const ready = import('vite').then((vite) =>
    vite.createServer({ server: { middlewareMode: true, hmr: { server } }, appType: 'spa' }),
  );
  app.use((req, res, next) => {
    ready.then((vite) => vite.middlewares(req, res, next)).catch(next);
  });
}
