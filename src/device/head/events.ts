import type { DeviceFault } from '../fault.ts';
import type { HeadReading } from './reading.ts';

/** What a head tells without being asked. */
export interface HeadEvents {
  /** The connection is gone for good; this head object is finished. */
  down: DeviceFault;
  /** The head restarted by itself; checksums and settings are back. Its lamp is cold: take the white tile again. */
  restarted: { readonly times: number };
  /** The head's own button was pressed: a light frame, judged as any other. */
  press: ButtonReading;
  /** A press whose frame could not be taken (saturated, say). */
  'press-failed': { readonly fault: DeviceFault; readonly waitedFor: unknown };
  /** A press that came before the button was armed for something else, and was noticed only then. It counts for nothing. */
  'press-set-aside': { readonly waitedFor: unknown };
}

/** A reading by the button, with what the button was armed for when it was pressed. */
export interface ButtonReading extends HeadReading {
  readonly waitedFor: unknown;
}

type Listener<K extends keyof HeadEvents> = (event: HeadEvents[K]) => void;

/** Typed listeners, called in the order they came. */
export class HeadListeners {
  readonly #listeners: { [K in keyof HeadEvents]: Set<Listener<K>> } = {
    down: new Set(),
    restarted: new Set(),
    press: new Set(),
    'press-failed': new Set(),
    'press-set-aside': new Set(),
  };

  /** @returns a function that takes the listener away again */
  on<K extends keyof HeadEvents>(name: K, listener: Listener<K>): () => void {
    const listeners = this.#listeners[name];
    listeners.add(listener);
    return () => listeners.delete(listener);
  }

  emit<K extends keyof HeadEvents>(name: K, event: HeadEvents[K]): void {
    for (const listener of this.#listeners[name]) listener(event);
  }

  clear(): void {
    for (const listeners of Object.values(this.#listeners)) listeners.clear();
  }
}
