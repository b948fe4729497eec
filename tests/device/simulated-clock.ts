import type { Cancel, Clock } from '../../src/device/clock.ts';

interface Timer {
  readonly due: number;
  readonly order: number;
  readonly run: () => void;
}

/**
 * A clock that jumps to the next timer as soon as nothing else is left to do: an hour of reading takes seconds, and
 * every run is the same.
 */
export class SimulatedClock implements Clock {
  #now = 0;
  #order = 0;
  #timers: Timer[] = [];

  now(): number {
    return this.#now;
  }

  after(ms: number, run: () => void): Cancel {
    const timer = { due: this.#now + Math.max(0, ms), order: this.#order++, run };
    let at = this.#timers.length;
    while (at > 0 && this.#timers[at - 1]!.due > timer.due) at--;
    this.#timers.splice(at, 0, timer);
    return () => {
      const index = this.#timers.indexOf(timer);
      if (index >= 0) this.#timers.splice(index, 1);
    };
  }

  get pendingTimers(): number {
    return this.#timers.length;
  }

  /** Lets time pass until the promise has settled. */
  async run<T>(promise: Promise<T>): Promise<T> {
    let settled = false;
    const mark = (): void => void (settled = true);
    promise.then(mark, mark);
    for (;;) {
      await idle();
      if (settled) return promise;
      if (!this.#step()) throw new Error('Nothing is left that could ever settle the promise.');
    }
  }

  /** Lets `ms` milliseconds pass. */
  async pass(ms: number): Promise<void> {
    const end = this.#now + ms;
    await idle();
    while (this.#timers[0] && this.#timers[0].due <= end) {
      this.#step();
      await idle();
    }
    this.#now = end;
  }

  #step(): boolean {
    const timer = this.#timers.shift();
    if (!timer) return false;
    this.#now = timer.due;
    timer.run();
    return true;
  }
}

/** All promise reactions that can run have run. */
function idle(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}
