import type { Response } from 'express';
import type { ServerEvent } from './api/events.ts';

/** Sends each event to every page that listens. */
export class Events {
  readonly #pages = new Set<Response>();
  readonly #listeners = new Set<(event: ServerEvent) => void>();

  /** A page that listens from now on, until its connection closes. */
  add(res: Response, hello: ServerEvent): void {
    res.writeHead(200, {
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-store',
      connection: 'keep-alive',
    });
    this.#pages.add(res);
    res.on('close', () => this.#pages.delete(res));
    res.write(`retry: 1000\n\n${framed(hello)}`);
  }

  send(event: ServerEvent): void {
    const text = framed(event);
    for (const page of this.#pages) page.write(text);
    for (const listener of this.#listeners) listener(event);
  }

  /** For tests and the pairing screen. @returns a function that takes the listener away */
  listen(listener: (event: ServerEvent) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** A comment line now and then, so that a closed laptop's connection is noticed. */
  keepAlive(): void {
    for (const page of this.#pages) page.write(': still here\n\n');
  }

  close(): void {
    for (const page of this.#pages) page.end();
    this.#pages.clear();
  }
}

function framed(event: ServerEvent): string {
  return `event: ${event.type}\ndata: ${JSON.stringify(event)}\n\n`;
}
