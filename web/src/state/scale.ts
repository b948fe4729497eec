/** The scale recipes are poured on, as this person set it. Kept in the browser only. */
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Scale } from '../../../src/mix/index.ts';

const KEY = 'tintladder.scale';
/** A pocket scale, and about what a knife can put down at once: common practice, no source. */
const OTHERWISE: Required<Scale> = { resolution: 0.01, smallestPour: 0.05 };

function kept(): Required<Scale> {
  try {
    const k = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Record<string, unknown>;
    const grams = (value: unknown, otherwise: number): number =>
      typeof value === 'number' && value > 0 && value <= 10 ? value : otherwise;
    return {
      resolution: grams(k['resolution'], OTHERWISE.resolution),
      smallestPour: grams(k['smallestPour'], OTHERWISE.smallestPour),
    };
  } catch {
    return OTHERWISE;
  }
}

let current = kept();
const hosts = new Set<ReactiveControllerHost>();

export function changeScale(change: Partial<Scale>): void {
  current = { ...current, ...change };
  try {
    localStorage.setItem(KEY, JSON.stringify(current));
  } catch {
    // A browser that keeps nothing still works for this visit.
  }
  for (const host of hosts) host.requestUpdate();
}

/** Draws its host again when the scale changes. */
export class ScaleController implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }
  get value(): Required<Scale> {
    return current;
  }
  hostConnected(): void {
    hosts.add(this.#host);
  }
  hostDisconnected(): void {
    hosts.delete(this.#host);
  }
}
