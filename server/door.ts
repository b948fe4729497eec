import type { RequestHandler } from 'express';
import helmet from 'helmet';
import { HttpProblem } from './problem.ts';
import { say } from './api/sentences/bench.ts';

/** Which names the page may be reached by; `others` is filled by pairing alone. */
export interface DoorOptions {
  /** Host names besides the loopback ones, lower case. */
  readonly others: ReadonlySet<string>;
  /** The listener of paired phones: then the loopback names are foreign, too. */
  readonly othersAlone?: boolean;
  /** Development only: the page's own tool needs a web socket. */
  readonly development?: boolean;
}

const LOOPBACK = new Set(['127.0.0.1', 'localhost', '[::1]']);

/**
 * Who may come in, before every route. A foreign name pointed at 127.0.0.1 arrives with its own Host, and a page of
 * another site with its own Origin: both are refused, so neither can read or command the bench.
 */
export function door(options: DoorOptions): RequestHandler {
  return (req, _res, next) => {
    const host = req.headers.host ?? '';
    const name = host.replace(/:\d+$/, '').toLowerCase();
    const known = options.othersAlone ? options.others : new Set([...LOOPBACK, ...options.others]);
    if (!known.has(name)) {
      const names = options.othersAlone ? [...known].join(' and ') : '127.0.0.1 and localhost';
      throw new HttpProblem(403, say('answers-to', { names }));
    }
    const origin = req.headers.origin;
    if (origin !== undefined && origin.toLowerCase() !== `http://${host.toLowerCase()}`) {
      throw new HttpProblem(403, say('another-site'));
    }
    const site = req.headers['sec-fetch-site'];
    if (req.path.startsWith('/api/') && (site === 'cross-site' || site === 'same-site')) {
      throw new HttpProblem(403, say('another-site'));
    }
    next();
  };
}

/** Security headers. Pages set styles through the object model alone, so no inline style is needed. */
export function headers(options: DoorOptions): RequestHandler {
  const self = ["'self'"];
  return helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: self,
        styleSrc: options.development ? ["'self'", "'unsafe-inline'"] : self,
        imgSrc: ["'self'", 'data:', 'blob:'],
        fontSrc: self,
        mediaSrc: ["'self'", 'blob:'],
        connectSrc: options.development ? ["'self'", 'ws:'] : self,
        workerSrc: self,
        manifestSrc: self,
        baseUri: ["'none'"],
        formAction: ["'none'"],
        frameAncestors: ["'none'"],
        objectSrc: ["'none'"],
      },
    },
    // Plain http on loopback: there is nothing to be strict about.
    strictTransportSecurity: false,
    referrerPolicy: { policy: 'no-referrer' },
  });
}
