import type { PaletteProfile } from '../../../src/profile/schema.ts';
import type { JobName, Jobs } from './jobs.ts';
import type { FromWorker, ToWorker } from './messages.ts';
import { said } from '../text/said.ts';

export interface JobOptions {
  readonly signal?: AbortSignal;
  /** Share done, 0..1, at most some ten times a second. */
  readonly onProgress?: (share: number) => void;
}

interface Waiting {
  readonly message: ToWorker;
  readonly resolve: (answer: never) => void;
  readonly reject: (reason: Error) => void;
  readonly onProgress: ((share: number) => void) | undefined;
}

/**
 * One worker with a palette open in it. Jobs run one after another. A search does not look up while it runs, so
 * stopping one ends the worker, and the jobs behind it go to a fresh one. Where jobs are short (`short`), stopping one
 * only turns its answer away: a worker started anew at each move of a slider would never keep up.
 */
export class WorkBench {
  readonly #short: boolean;
  #worker: Worker | undefined;
  #profile: PaletteProfile | undefined;
  #next = 0;
  readonly #waiting = new Map<number, Waiting>();

  constructor(options: { readonly short?: boolean } = {}) {
    this.#short = options.short ?? false;
  }

  /** Opens a palette for the jobs that follow. The same profile again costs nothing. */
  open(profile: PaletteProfile): void {
    if (profile === this.#profile) return;
    this.#profile = profile;
    this.#worker?.postMessage({ type: 'palette', profile } satisfies ToWorker);
  }

  /**
   * Runs one job.
   * @throws Error with one sentence when the room refuses; the signal's reason when it was stopped.
   */
  run<N extends JobName>(name: N, ask: Jobs[N]['ask'], options: JobOptions = {}): Promise<Jobs[N]['answer']> {
    const { signal, onProgress } = options;
    if (signal?.aborted) return Promise.reject(stopped());
    const id = this.#next++;
    return new Promise<Jobs[N]['answer']>((resolve, reject) => {
      const stop = (): void => this.#stop(id);
      signal?.addEventListener('abort', stop, { once: true });
      const done = (): void => signal?.removeEventListener('abort', stop);
      const message = { type: 'job', id, name, ask } as ToWorker;
      this.#waiting.set(id, {
        message,
        resolve: (answer) => (done(), resolve(answer)),
        reject: (reason) => (done(), reject(reason)),
        onProgress,
      });
      this.#start().postMessage(message);
    });
  }

  /** Lets the worker go. Jobs under way are stopped. */
  close(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    for (const { reject } of this.#waiting.values()) reject(stopped());
    this.#waiting.clear();
  }

  #start(): Worker {
    if (this.#worker) return this.#worker;
    const worker = new Worker(new URL('./mixing-worker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', (e: MessageEvent<FromWorker>) => this.#heard(e.data));
    worker.addEventListener('error', () => this.close());
    if (this.#profile) worker.postMessage({ type: 'palette', profile: this.#profile } satisfies ToWorker);
    this.#worker = worker;
    return worker;
  }

  #heard(message: FromWorker): void {
    const job = this.#waiting.get(message.id);
    if (!job) return;
    if (message.type === 'progress') job.onProgress?.(message.share);
    else {
      this.#waiting.delete(message.id);
      if (message.type === 'answer') job.resolve(message.answer as never);
      else job.reject(new Error(said(message.sentence)));
    }
  }

  #stop(id: number): void {
    const job = this.#waiting.get(id);
    if (!job) return;
    this.#waiting.delete(id);
    job.reject(stopped());
    if (this.#short) return;
    this.#worker?.terminate();
    this.#worker = undefined;
    if (this.#waiting.size === 0) return;
    const fresh = this.#start();
    for (const { message } of this.#waiting.values()) fresh.postMessage(message);
  }
}

function stopped(): Error {
  return new DOMException('The work was stopped.', 'AbortError');
}
