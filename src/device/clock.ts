/** Time as the device room needs it. The server plugs in the real clock, a test plugs in a simulated one. */
export interface Clock {
  /** Milliseconds since some fixed moment; never runs backwards. */
  now(): number;
  /** Calls `run` once after `ms` milliseconds; the answer cancels it. */
  after(ms: number, run: () => void): Cancel;
}

export type Cancel = () => void;

/** Resolves after `ms` milliseconds of the given clock. */
export function sleep(clock: Clock, ms: number): Promise<void> {
  return new Promise((resolve) => {
    clock.after(ms, resolve);
  });
}

/** The promise's own outcome, or `late()` thrown when it takes longer than `ms`. The loser is ignored. */
export function within<T>(clock: Clock, ms: number, promise: Promise<T>, late: () => Error): Promise<T> {
  return new Promise<T>((resolve, reject) => {
    const cancel = clock.after(ms, () => reject(late()));
    promise.then(
      (value) => {
        cancel();
        resolve(value);
      },
      (error: unknown) => {
        cancel();
        reject(error instanceof Error ? error : new Error(String(error)));
      },
    );
  });
}
