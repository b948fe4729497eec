import type { Clock } from '../clock.ts';

/** The computer's own clock; monotonic, so that a changed wall clock breaks no time limit. */
export const systemClock: Clock = {
  now: () => performance.now(),
  after(ms, run) {
    const timer = setTimeout(run, ms);
    return () => clearTimeout(timer);
  },
};
