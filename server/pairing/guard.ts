import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Request, RequestHandler } from 'express';
import { eventRoutes } from '../api/events.ts';
import { HttpProblem } from '../problem.ts';
import type { Pairing } from './pairing.ts';
import { say } from '../api/sentences/bench.ts';

export const COOKIE = 'tintladder_phone';
/** The one thing an unpaired phone may ask for. */
export const PAIR_PATH = '/api/pairing/phones';
/** Where the code's address leads. */
export const PAIR_PAGE = '/pair';

export function tokenOf(req: Request): string {
  for (const part of (req.headers.cookie ?? '').split(';')) {
    const [name, value = ''] = part.trim().split('=', 2);
    if (name === COOKIE) return value;
  }
  return '';
}

/**
 * Who may come in from the network, after the door. Without a token there is the pairing page and its own files, and
 * the way to send a code; everything else is refused. With one there is the whole bench but for the pairing of others.
 */
export function guard(pairing: Pairing, webFolder: string): RequestHandler {
  return (req, res, next) => {
    const { path, method } = req;
    const plain = method === 'GET' || method === 'HEAD';
    if (method === 'POST' && path === PAIR_PATH) return next();
    if (plain && path === PAIR_PAGE) return sendPairPage();
    const phone = pairing.phoneOf(tokenOf(req));
    if (!phone) {
      if (plain && path === '/') return sendPairPage();
      if (plain && filesOfPairPage(webFolder).has(path)) return next();
      throw new HttpProblem(403, say('not-paired'), 'urn:tintladder:not-paired');
    }
    if (path.toLowerCase().startsWith('/api/pairing')) {
      throw new HttpProblem(403, say('computer-alone'));
    }
    pairing.answering(phone.id, res);
    if (path === eventRoutes.events.path) pairing.listening(phone.id, res);
    next();

    function sendPairPage(): void {
      res.setHeader('cache-control', 'no-store');
      res.sendFile(join(webFolder, 'pair.html'), (error) => {
        if (!error || res.headersSent) return;
        next(new HttpProblem(503, say('pages-not-built-pair')));
      });
    }
  };
}

const known = new Map<string, Set<string>>();

/** What the built pairing page itself names: its scripts, styles, font and mark. */
function filesOfPairPage(webFolder: string): Set<string> {
  const before = known.get(webFolder);
  if (before) return before;
  let page: string;
  try {
    page = readFileSync(join(webFolder, 'pair.html'), 'utf8');
  } catch {
    return new Set();
  }
  const files = new Set([...page.matchAll(/(?:src|href)="\.\/([^"]+)"/g)].map((m) => `/${m[1]}`));
  known.set(webFolder, files);
  return files;
}
