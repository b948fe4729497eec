import express, { type Express } from 'express';
import type { ErrorRequestHandler } from 'express';
import type { Logger } from 'pino';
import { eventRoutes } from './api/events.ts';
import { PROBLEM_MEDIA_TYPE } from './api/problem.ts';
import { ANSWERED, answering } from './answer.ts';
import type { Bench } from './bench.ts';
import { door, type DoorOptions, headers } from './door.ts';
import { servePages } from './pages.ts';
import { HttpProblem, problemDetails } from './problem.ts';
import { problemOf } from './problem-of.ts';
import { browserPortAnswers } from './routes/browser-ports.ts';
import { buttonAnswers } from './routes/button.ts';
import { checkAnswers } from './routes/checks.ts';
import { fitAnswers } from './routes/fits.ts';
import { importAnswers } from './routes/imports.ts';
import { instrumentAnswers } from './routes/instrument.ts';
import { ladderAnswers } from './routes/ladders.ts';
import { mixAnswers } from './routes/mix.ts';
import { guard } from './pairing/guard.ts';
import type { Pairing } from './pairing/pairing.ts';
import { pairingAnswers } from './routes/pairing.ts';
import { paletteAnswers } from './routes/palettes.ts';
import { profileAnswers } from './routes/profiles.ts';
import { renewAnswers } from './routes/renew.ts';
import { stateAnswers } from './routes/state.ts';
import { tileAnswers } from './routes/tiles.ts';
import { tubeAnswers } from './routes/tubes.ts';
import { VERSION } from './version.ts';
import { say } from './api/sentences/bench.ts';

export interface AppOptions extends DoorOptions {
  readonly logger: Logger;
  /** Checks every answer against its schema; tests switch it on. */
  readonly checkAnswers?: boolean;
  /** Present when phones may be paired. */
  readonly pairing?: Pairing | undefined;
  /** This app answers phones on the network: they need a token. */
  readonly fromNetwork?: boolean;
  /** Serves the pages in development; absent, the built ones are served. */
  readonly pages?: (app: Express) => void;
}

/** Largest body of any request: a swatch set of a whole palette, or a file of readings. */
export const BODY_LIMIT = '24mb';

/** The whole program behind HTTP, without a port: tests and `main.ts` listen with it. */
export function createApp(bench: Bench, options: AppOptions): Express {
  const app = express();
  app.disable('x-powered-by');
  app.set('etag', false);
  app.use(headers(options));
  app.use(door(options));
  const { pairing, fromNetwork = false } = options;
  if (pairing && fromNetwork) app.use(guard(pairing, bench.webFolder));
  const answer = answering(app, { checkAnswers: options.checkAnswers ?? false, bodyLimit: BODY_LIMIT });
  stateAnswers(answer, bench);
  paletteAnswers(answer, bench);
  tubeAnswers(answer, bench);
  tileAnswers(answer, bench);
  browserPortAnswers(answer, bench);
  instrumentAnswers(answer, bench);
  ladderAnswers(answer, bench);
  importAnswers(answer, bench);
  fitAnswers(answer, bench);
  profileAnswers(answer, bench);
  renewAnswers(answer, bench);
  checkAnswers(answer, bench);
  mixAnswers(answer, bench);
  buttonAnswers(answer, bench);
  pairingAnswers(answer, bench, pairing, fromNetwork);
  answer(eventRoutes.events, ({ res }) => {
    bench.events.add(res, { type: 'hello', version: VERSION });
    return ANSWERED;
  });
  app.use('/api', (req) => {
    throw new HttpProblem(
      404,
      say('no-route', { request: `${req.method} ${req.originalUrl.split('?')[0]}` }),
    );
  });
  if (options.pages) options.pages(app);
  else servePages(app, bench.webFolder);
  app.use((req) => {
    throw new HttpProblem(404, say('nothing-at', { path: req.path }));
  });
  app.use(problems(options.logger));
  return app;
}

/** Every error leaves as problem details; what is not a sentence for people goes to the log alone. */
function problems(logger: Logger): ErrorRequestHandler {
  return (error: unknown, req, res, next) => {
    const known = problemOf(error);
    if (!known) logger.error({ err: error, method: req.method, path: req.path }, 'fault');
    if (res.headersSent) return next(error);
    const problem = known ?? new HttpProblem(500, say('failed'));
    res.status(problem.status);
    res.setHeader('cache-control', 'no-store');
    res.type(PROBLEM_MEDIA_TYPE).send(JSON.stringify(problemDetails(problem)));
  };
}
