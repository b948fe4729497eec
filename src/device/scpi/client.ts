import type { Clock } from '../clock.ts';
import type { DeviceFault } from '../fault.ts';
import type { LineTransport } from '../transport.ts';
import { askTwice } from './ask.ts';
import type { Conversation, Question, Recover } from './ask.ts';
import { QueryLine } from './query-line.ts';
import type { WireListener } from './query-line.ts';

/**
 * A SCPI conversation with one head: questions are put one after another, each with its time limit, its check and its
 * one repeat after a doubt.
 */
export class ScpiClient implements Conversation {
  readonly line: QueryLine;
  /** Runs when the head has restarted; it must talk through `direct`, since a question is still open. */
  recover: Recover | undefined;
  /** The same conversation without the queue and without recovery: for use inside `recover` only. */
  readonly direct: Conversation;
  readonly #count = { retries: 0 };
  #tail: Promise<unknown> = Promise.resolve();
  #lastTraffic: number;

  constructor(transport: LineTransport, clock: Clock, wire?: WireListener) {
    this.line = new QueryLine(transport, clock, wire);
    this.direct = { ask: (question) => askTwice(this.line, question, this.#count) };
    this.#lastTraffic = clock.now();
  }

  set onDown(listener: (fault: DeviceFault) => void) {
    this.line.onDown = listener;
  }

  /** Questions asked a second time. */
  get retries(): number {
    return this.#count.retries;
  }

  /** When the last answer came or the last question failed, ms of the clock. */
  get lastTraffic(): number {
    return this.#lastTraffic;
  }

  ask<T>(question: Question<T>): Promise<T> {
    return this.inTurn(async () => {
      try {
        return await askTwice(this.line, question, this.#count, this.recover);
      } finally {
        this.#lastTraffic = this.line.clock.now();
      }
    });
  }

  /** Runs `work` when everything asked before it is done. */
  inTurn<T>(work: () => Promise<T>): Promise<T> {
    const result = this.#tail.then(work, work);
    this.#tail = result.catch(() => undefined);
    return result;
  }

  close(): Promise<void> {
    return this.line.close();
  }
}
