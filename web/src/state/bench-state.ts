/** What every screen knows of the bench: palettes, instrument, server settings. Fetched once, kept fresh by events. */
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { State } from '../../../server/api/state.ts';
import { call } from '../api/call.ts';
import { listen } from '../api/events.ts';

let current: State | undefined;
let failed: Error | undefined;
let asked = false;
const hosts = new Set<ReactiveControllerHost>();

function tell(): void {
  for (const host of hosts) host.requestUpdate();
}

/** Fetches the state again, after a command that changes palettes or settings. */
export async function refreshBench(): Promise<void> {
  try {
    current = await call('state');
    failed = undefined;
  } catch (cause) {
    failed = cause instanceof Error ? cause : new Error(String(cause));
  }
  tell();
}

function start(): void {
  if (asked) return;
  asked = true;
  void refreshBench();
  listen('hello', () => void refreshBench());
  listen('changed', () => void refreshBench());
  listen('instrument', ({ instrument }) => {
    if (!current) return;
    current = { ...current, instrument };
    tell();
  });
}

/** Sets the instrument an answer carried, before its event arrives. */
export function setInstrument(instrument: State['instrument']): void {
  if (!current) return;
  current = { ...current, instrument };
  tell();
}

/** Draws its host again whenever the bench's state changes. `value` is undefined until the first answer. */
export class BenchState implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }
  get value(): State | undefined {
    return current;
  }
  get error(): Error | undefined {
    return failed;
  }
  hostConnected(): void {
    hosts.add(this.#host);
    start();
  }
  hostDisconnected(): void {
    hosts.delete(this.#host);
  }
}
