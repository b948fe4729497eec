import { say } from './sentences.ts';

/** Something asked of the mixing room that it cannot do, in one sentence: what was seen, what is allowed, what to do. */
export class MixProblem extends RangeError {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'MixProblem';
  }
}

/** The caller asked a search to stop before it was done; nothing was found. */
export class MixingStopped extends Error {
  constructor() {
    super(say('stopped'));
    this.name = 'MixingStopped';
  }
}

/** How a caller watches a long search: both are called often and must be cheap. */
export interface Watch {
  /** True to give up: the search then throws MixingStopped. `() => signal.aborted` fits. */
  readonly shouldStop?: () => boolean;
  /** Work done so far and in all, in steps of the search. */
  readonly onProgress?: (done: number, of: number) => void;
}

/** @throws MixingStopped when the caller has asked to stop. */
export function heed(watch: Watch | undefined, done: number, of: number): void {
  if (watch?.shouldStop?.()) throw new MixingStopped();
  watch?.onProgress?.(done, of);
}
