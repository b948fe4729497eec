import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import type { AnswerOf, BodyOf, Route } from '../../server/api/route.ts';
import { pathFor } from '../../server/api/route.ts';
import { ROUTES, type RouteName } from '../../server/api/table.ts';
import { start, type Started, type StartOptions } from '../../server/start.ts';

export interface Reply<T> {
  readonly status: number;
  readonly headers: Headers;
  readonly body: T;
}

interface Asked<N extends RouteName> {
  readonly params?: Record<string, string>;
  readonly query?: Record<string, string>;
  readonly body?: BodyOf<(typeof ROUTES)[N]>;
}

/** A real bench on a port of its own, spoken to over HTTP alone; its answers are held to their schemas. */
export class TestBench {
  readonly folder = mkdtempSync(join(tmpdir(), 'tintladder-bench-'));
  #started: Started | undefined;

  get started(): Started {
    return this.#started!;
  }

  get address(): string {
    return this.started.address;
  }

  async open(options: Partial<StartOptions> = {}): Promise<this> {
    this.#started = await start({
      storeFile: join(this.folder, 'tintladder.sqlite'),
      port: 0,
      checkAnswers: true,
      logger: pino({ level: 'silent' }),
      ...options,
    });
    return this;
  }

  /** Stops and opens again on the same store. */
  async reopen(options: Partial<StartOptions> = {}): Promise<void> {
    await this.started.close();
    await this.open(options);
  }

  async close(): Promise<void> {
    await this.#started?.close();
    rmSync(this.folder, { recursive: true, force: true });
  }

  async ask<N extends RouteName>(
    name: N,
    asked: Asked<N> = {},
  ): Promise<Reply<AnswerOf<(typeof ROUTES)[N]>>> {
    const route: Route = ROUTES[name];
    const query = asked.query ? `?${new URLSearchParams(asked.query).toString()}` : '';
    const response = await fetch(this.address + pathFor(route.path, asked.params) + query, {
      method: route.method,
      ...(asked.body === undefined
        ? {}
        : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(asked.body) }),
    });
    const text = await response.text();
    const json = /json/.test(response.headers.get('content-type') ?? '');
    const body = json ? (JSON.parse(text) as unknown) : text;
    return { status: response.status, headers: response.headers, body: body as AnswerOf<(typeof ROUTES)[N]> };
  }

  /** The answer of a request that must succeed. */
  async get<N extends RouteName>(name: N, asked: Asked<N> = {}): Promise<AnswerOf<(typeof ROUTES)[N]>> {
    const reply = await this.ask(name, asked);
    if (reply.status >= 300)
      throw new Error(`${name} answered ${reply.status}: ${JSON.stringify(reply.body)}`);
    return reply.body;
  }

  /** The sentence of a request that must be refused. */
  async refusal<N extends RouteName>(
    name: N,
    asked: Asked<N> = {},
  ): Promise<{ status: number; detail: string; type: string; code?: string; values?: unknown }> {
    const reply = await this.ask(name, asked);
    if (reply.status < 400) throw new Error(`${name} answered ${reply.status} where a refusal was expected.`);
    return reply.body as unknown as { status: number; detail: string; type: string };
  }

  /** Demo rack, practice instrument, white tile and trap: ready for a ladder. */
  async readyWithDemo(): Promise<void> {
    await this.get('createDemoRack');
    await this.get('connectInstrument', { body: { transport: 'practice', kind: 'spectral', seed: 7 } });
    // Shorter exposures than usual; much shorter ones leave too few counts at 380 nm to tell noise from room light.
    await this.get('setInstrument', { body: { gain: 64, apertureMs: 120 } });
    await this.get('readBlackTrap');
    await this.get('readWhiteTile', { body: {} });
  }

  /** Does whatever the ladder asks for until it asks for something else than weighing and reading. */
  async climb(
    tubeId: string,
    options: { repeats?: number; whiteParts?: number[] } = {},
  ): Promise<AnswerOf<(typeof ROUTES)['getLadder']>> {
    let ladder = await this.get('startLadder', { body: { tubeId, ...options } });
    const ladderId = ladder.id;
    for (let step = 0; step < 200; step += 1) {
      const { action, rungId } = ladder.next;
      if (action === 'weigh') {
        const rung = ladder.rungs.find((r) => r.id === rungId)!;
        const grams = rung.parts.map((part) => part.plannedGrams);
        ladder = await this.get('weighRung', { params: { ladderId, rungId: rung.id }, body: { grams } });
      } else if (action === 'read') {
        const taken = await this.get('takeReading', {
          params: { ladderId, rungId: rungId! },
          body: { source: 'head' },
        });
        ladder = taken.ladder;
      } else if (action === 'calibrate') {
        await this.get('readWhiteTile', { body: {} });
        ladder = await this.get('getLadder', { params: { ladderId } });
      } else return ladder;
    }
    throw new Error('The ladder never came to an end.');
  }
}
