import type { Cancel, Clock } from '../clock.ts';

/**
 * Runs `work` again and again, `everyMs` after the last run has ended, until `stop`. Work that throws is the owner's
 * affair: it must handle its own errors.
 */
export class Repeating {
  readonly #clock: Clock;
  readonly #everyMs: number;
  readonly #work: () => Promise<void>;
  #cancel: Cancel | undefined;
  #running = false;

  constructor(clock: Clock, everyMs: number, work: () => Promise<void>) {
    this.#clock = clock;
    this.#everyMs = everyMs;
    this.#work = work;
  }

  start(): void {
    if (this.#running) return;
    this.#running = true;
    this.#next();
  }

  stop(): void {
    this.#running = false;
    this.#cancel?.();
    this.#cancel = undefined;
  }

  #next(): void {
    if (!this.#running) return;
    this.#cancel = this.#clock.after(this.#everyMs, () => {
      void this.#work().then(
        () => this.#next(),
        () => this.#next(),
      );
    });
  }
}
