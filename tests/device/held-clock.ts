import type { Cancel, Clock } from '../../src/device/clock.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';

interface Held {
  readonly ms: number;
  readonly run: () => void;
}

/** The real clock until it is held; from then on nothing is due but what the test lets come, however busy the machine. */
export class HeldClock implements Clock {
  readonly #timers = new Set<Held>();
  #held = false;

  now(): number {
    return systemClock.now();
  }

  after(ms: number, run: () => void): Cancel {
    if (!this.#held) return systemClock.after(ms, run);
    const timer = { ms, run };
    this.#timers.add(timer);
    return () => void this.#timers.delete(timer);
  }

  hold(): void {
    this.#held = true;
  }

  /** Every timer of exactly `ms` that waits now is due. @returns how many */
  due(ms: number): number {
    const now = [...this.#timers].filter((timer) => timer.ms === ms);
    for (const timer of now) {
      this.#timers.delete(timer);
      timer.run();
    }
    return now.length;
  }
}
