import { Worker } from 'node:worker_threads';
import { HttpProblem, unusable } from '../problem.ts';
import type { MixAnswers, MixJob } from './run-mix.ts';
import { say } from '../api/sentences/bench.ts';

export interface MixQuestion {
  readonly id: number;
  /** The profile as text: a worker has no store. */
  readonly profile: string;
  readonly job: MixJob;
}

export type MixMessage =
  | { readonly id: number; readonly answer: unknown }
  /** `sentence` is null for a fault of the program. */
  | { readonly id: number; readonly sentence: string | null };

interface Waiting {
  readonly resolve: (answer: unknown) => void;
  readonly reject: (error: Error) => void;
}

/** Longer than any search takes; one that does not end is stopped with its thread. */
const LONGEST_MS = 120_000;

/** Searches run beside the server's own thread, one after another, so that readings go on meanwhile. */
export class MixRunner {
  #worker: Worker | undefined;
  #last = 0;
  readonly #waiting = new Map<number, Waiting>();

  /** @throws HttpProblem with the mixing room's own sentence */
  async ask<K extends MixJob['kind']>(profile: string, job: MixJob & { kind: K }): Promise<MixAnswers[K]> {
    const id = (this.#last += 1);
    const worker = (this.#worker ??= this.#start());
    const tooLong = setTimeout(() => {
      this.stop(new HttpProblem(503, say('search-too-long')));
    }, LONGEST_MS);
    try {
      return (await new Promise<unknown>((resolve, reject) => {
        this.#waiting.set(id, { resolve, reject });
        worker.postMessage({ id, profile, job } satisfies MixQuestion);
      })) as MixAnswers[K];
    } finally {
      clearTimeout(tooLong);
      this.#waiting.delete(id);
    }
  }

  stop(why: Error = new Error(say('stopping'))): void {
    const worker = this.#worker;
    this.#worker = undefined;
    for (const { reject } of this.#waiting.values()) reject(why);
    void worker?.terminate();
  }

  #start(): Worker {
    const worker = new Worker(new URL('./mix-worker.mjs', import.meta.url));
    worker.on('message', (message: MixMessage) => {
      const waiting = this.#waiting.get(message.id);
      if ('answer' in message) waiting?.resolve(message.answer);
      else if (message.sentence === null) waiting?.reject(new Error(say('worker-failed')));
      else waiting?.reject(unusable(message.sentence));
    });
    worker.on('error', (error) => {
      if (this.#worker === worker) this.stop(error instanceof Error ? error : new Error(String(error)));
    });
    worker.unref();
    return worker;
  }
}
