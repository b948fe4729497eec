import { Worker } from 'node:worker_threads';
import { FAULT_SENTENCE, type FitJob, type FitMessage } from './fit-job.ts';

export interface FitHandle {
  /** Resolves with the last word: complete or failed. `undefined` when it was stopped. */
  readonly done: Promise<Exclude<FitMessage, { kind: 'progress' }> | undefined>;
  readonly stop: () => void;
}

/** Runs fits beside the server's own thread, so that readings go on meanwhile. */
export class FitRunner {
  readonly #running = new Map<string, FitHandle>();
  readonly #fault: (error: unknown) => void;

  /** @param fault is told of faults of the program, for the log */
  constructor(fault: (error: unknown) => void) {
    this.#fault = fault;
  }

  start(id: string, job: FitJob, progress: (done: number, sentence: string) => void): FitHandle {
    const worker = new Worker(new URL('./fit-worker.mjs', import.meta.url), { workerData: job });
    let finish!: (message: Exclude<FitMessage, { kind: 'progress' }> | undefined) => void;
    const done = new Promise<Exclude<FitMessage, { kind: 'progress' }> | undefined>(
      (resolve) => (finish = resolve),
    );
    worker.on('message', (message: FitMessage) => {
      if (message.kind === 'progress') progress(message.done, message.sentence);
      else finish(message);
    });
    worker.on('error', (error) => {
      this.#fault(error);
      finish({ kind: 'failed', fault: true, sentence: FAULT_SENTENCE });
    });
    worker.on('exit', () => {
      this.#running.delete(id);
      finish(undefined);
    });
    const handle: FitHandle = { done, stop: () => void worker.terminate() };
    this.#running.set(id, handle);
    return handle;
  }

  stop(id: string): boolean {
    const handle = this.#running.get(id);
    handle?.stop();
    return handle !== undefined;
  }

  stopAll(): void {
    for (const handle of this.#running.values()) handle.stop();
  }
}
