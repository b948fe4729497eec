import { nextFrameNumber } from '../framing/frame.ts';

export type FrameOrder = 'fresh' | 'stale' | 'odd';

/**
 * Follows the frame numbers: each frame asked for has the next one. A number seen again is a repeat of an old answer;
 * any other one means a restart, another program on the port, or a damaged digit. A frame that follows directly on an
 * odd one is taken: then the odd number was true.
 */
export class FrameSequence {
  #last: number | undefined;
  #odd: number | undefined;
  #asked = 0;

  /** To be called for every frame asked for, before its answer is judged. */
  asked(frames = 1): void {
    this.#asked += frames;
  }

  judge(frame: number): FrameOrder {
    const order = this.#order(frame);
    if (order === 'fresh') {
      this.#last = frame;
      this.#odd = undefined;
      this.#asked = 0;
    } else if (order === 'odd') {
      this.#odd = frame;
    }
    return order;
  }

  /** The head restarted: its numbers begin again. */
  restart(): void {
    this.#last = undefined;
    this.#odd = undefined;
  }

  #order(frame: number): FrameOrder {
    if (this.#last === undefined) return 'fresh';
    if (frame === this.#last) return 'stale';
    for (let step = 1; step <= this.#asked; step++)
      if (frame === nextFrameNumber(this.#last, step)) return 'fresh';
    return this.#odd !== undefined && frame === nextFrameNumber(this.#odd) ? 'fresh' : 'odd';
  }
}
