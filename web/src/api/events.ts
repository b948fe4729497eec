/**
 * Live events of the bench: one connection for the whole page, opened with the first listener. The browser reconnects
 * by itself; after each reconnection `hello` comes again and what is shown should be fetched anew.
 */
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { ServerEvent, ServerEventType } from '../../../server/api/events.ts';

export type EventOf<T extends ServerEventType> = Extract<ServerEvent, { type: T }>;
type Listener = (event: ServerEvent) => void;
export type Connection = 'opening' | 'open' | 'away';

const TYPES: readonly ServerEventType[] = [
  'hello',
  'instrument',
  'reading',
  'taken',
  'ladder',
  'port',
  'fit',
  'changed',
];
const listeners = new Set<Listener>();
const watchers = new Set<(connection: Connection) => void>();
let source: EventSource | undefined;
let connection: Connection = 'opening';

function become(next: Connection): void {
  if (next === connection) return;
  connection = next;
  for (const watch of watchers) watch(next);
}

function open(): void {
  if (source) return;
  source = new EventSource('/api/events');
  source.addEventListener('open', () => become('open'));
  source.addEventListener('error', () => {
    become('away');
    // A closed source never comes back by itself (the server answered with an error): open a new one.
    if (source?.readyState === EventSource.CLOSED) {
      source = undefined;
      setTimeout(open, 2000);
    }
  });
  for (const type of TYPES) {
    source.addEventListener(type, (message: MessageEvent<string>) => {
      const event = JSON.parse(message.data) as ServerEvent;
      for (const listener of listeners) listener(event);
    });
  }
}

/** Listens to one kind of event; returns how to stop. */
export function listen<T extends ServerEventType>(type: T, then: (event: EventOf<T>) => void): () => void {
  const listener: Listener = (event) => {
    if (event.type === type) then(event as EventOf<T>);
  };
  listeners.add(listener);
  open();
  return () => listeners.delete(listener);
}

/** Told at each change of the connection; told at once how it stands. */
export function watchConnection(then: (connection: Connection) => void): () => void {
  watchers.add(then);
  open();
  then(connection);
  return () => watchers.delete(then);
}

type Handlers = { readonly [T in ServerEventType]?: (event: EventOf<T>) => void };

/** Listens as long as its host is on the page. */
export class EventsController implements ReactiveController {
  readonly #handlers: Handlers;
  #stops: (() => void)[] = [];

  constructor(host: ReactiveControllerHost, handlers: Handlers) {
    this.#handlers = handlers;
    host.addController(this);
  }

  hostConnected(): void {
    for (const type of TYPES) {
      const handler = this.#handlers[type] as Listener | undefined;
      if (handler) this.#stops.push(listen(type, handler));
    }
  }

  hostDisconnected(): void {
    for (const stop of this.#stops) stop();
    this.#stops = [];
  }
}
