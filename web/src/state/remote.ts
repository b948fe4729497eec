/**
 * Slow things are states, not flags: a value that is not asked for yet, on its way, here, or failed. Each one is
 * rendered. A newer request aborts the older one.
 */
import type { ReactiveController, ReactiveControllerHost } from 'lit';

export type Remote<T> =
  | { readonly status: 'initial' }
  /** `previous` is what was shown before, so that the page need not jump. */
  | { readonly status: 'pending'; readonly since: number; readonly previous?: T }
  | { readonly status: 'complete'; readonly value: T }
  | { readonly status: 'error'; readonly error: Error; readonly previous?: T };

export interface RemoteViews<T, R> {
  initial?: () => R;
  pending?: (previous: T | undefined) => R;
  complete: (value: T) => R;
  error?: (error: Error, previous: T | undefined) => R;
}

/** Draws whichever state it is in. Without a `pending` view, the previous value stays on the page meanwhile. */
export function renderRemote<T, R>(remote: Remote<T>, views: RemoteViews<T, R>): R | undefined {
  switch (remote.status) {
    case 'initial':
      return views.initial?.();
    case 'pending':
      if (views.pending) return views.pending(remote.previous);
      return remote.previous === undefined ? undefined : views.complete(remote.previous);
    case 'complete':
      return views.complete(remote.value);
    case 'error':
      if (views.error) return views.error(remote.error, remote.previous);
      return remote.previous === undefined ? undefined : views.complete(remote.previous);
  }
}

/** The value, if there is one to show. */
export function valueOf<T>(remote: Remote<T>): T | undefined {
  if (remote.status === 'complete') return remote.value;
  return remote.status === 'initial' ? undefined : remote.previous;
}

/** Holds one remote value for a host and draws the host again at each change of state. */
export class RemoteController<T> implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  #abort: AbortController | undefined;
  #state: Remote<T> = { status: 'initial' };

  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }

  get state(): Remote<T> {
    return this.#state;
  }
  get value(): T | undefined {
    return valueOf(this.#state);
  }
  get pending(): boolean {
    return this.#state.status === 'pending';
  }
  get error(): Error | undefined {
    return this.#state.status === 'error' ? this.#state.error : undefined;
  }

  /** Sets a value that arrived another way (an event, an answer to a command). */
  set(value: T): void {
    this.#abort?.abort();
    this.#become({ status: 'complete', value });
  }

  /** Asks; resolves to the value, or to undefined when it failed or a newer request overtook it. */
  async run(ask: (signal: AbortSignal) => Promise<T>): Promise<T | undefined> {
    this.#abort?.abort();
    const abort = new AbortController();
    this.#abort = abort;
    const previous = valueOf(this.#state);
    const kept = previous === undefined ? {} : { previous };
    this.#become({ status: 'pending', since: performance.now(), ...kept });
    try {
      const value = await ask(abort.signal);
      if (abort.signal.aborted) return undefined;
      this.#become({ status: 'complete', value });
      return value;
    } catch (cause) {
      if (abort.signal.aborted) return undefined;
      const error = cause instanceof Error ? cause : new Error(String(cause));
      this.#become({ status: 'error', error, ...kept });
      return undefined;
    }
  }

  hostDisconnected(): void {
    this.#abort?.abort();
  }

  #become(state: Remote<T>): void {
    this.#state = state;
    this.#host.requestUpdate();
  }
}
