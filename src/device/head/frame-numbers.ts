import { DeviceFault } from '../fault.ts';
import { LAST_FRAME_NUMBER, nextFrameNumber } from '../framing/frame.ts';
import { parseNaturalNumber } from '../framing/number.ts';
import { QUERY_MS } from '../scpi/query-line.ts';
import type { QueryLine } from '../scpi/query-line.ts';

export type FrameOrder = 'fresh' | 'stale' | 'odd';

/**
 * Follows the numbers of the frames. Only the very next number is the frame that was asked for: the number seen last is
 * a repeat of an old answer, and any other means a restart, another program on the port, a damaged digit or an answer
 * that comes late. After any doubt the head is asked for the number of its last frame before another is taken.
 */
export class FrameNumbers {
  #last = 0;
  #sure = false;

  get sure(): boolean {
    return this.#sure;
  }

  /** Something may have taken a frame unseen. */
  doubt(): void {
    this.#sure = false;
  }

  /** Asks the head. @throws DeviceFault `frame`, and those of the line */
  async learn(line: QueryLine): Promise<void> {
    const answer = await line.exchange('SENS:FRAM?', QUERY_MS);
    const number = parseNaturalNumber(answer);
    if (number === undefined || number > LAST_FRAME_NUMBER) {
      throw new DeviceFault('frame', { asked: 'SENS:FRAM?', seen: `"${answer.slice(0, 40)}"` });
    }
    this.#last = number;
    this.#sure = true;
  }

  /** The frame to come is the one after this. */
  follow(frame: number): void {
    this.#last = frame;
    this.#sure = true;
  }

  judge(frame: number): FrameOrder {
    this.#sure = false;
    const fresh = frame === nextFrameNumber(this.#last);
    if (!fresh) return frame === this.#last ? 'stale' : 'odd';
    this.#last = frame;
    this.#sure = true;
    return 'fresh';
  }
}
