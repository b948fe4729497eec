/** Longest response line (protocol section 1): a frame of 512 channels fits. */
export const LONGEST_RESPONSE = 4096;

const LF = 10;
const CR = 13;

/**
 * Cuts a byte stream into lines. CR, LF or CRLF ends a line, empty lines vanish, bytes are read as latin1 so that one
 * broken byte cannot spoil its neighbours. A run longer than `longest` is dropped up to its end and reported once, so
 * memory stays bounded whatever is on the port. Use a new one for each connection.
 */
export class LineSplitter {
  readonly longest: number;
  readonly #onLine: (line: string) => void;
  readonly #onOverlong: () => void;
  #line = '';
  #dropping = false;

  constructor(longest: number, onLine: (line: string) => void, onOverlong: () => void) {
    if (!Number.isInteger(longest) || longest < 1) {
      throw new RangeError(`A line may be 1 character long or more; ${longest} was given.`);
    }
    this.longest = longest;
    this.#onLine = onLine;
    this.#onOverlong = onOverlong;
  }

  /** Forgets the part of a line received so far. */
  discard(): void {
    this.#line = '';
    this.#dropping = false;
  }

  push(chunk: Uint8Array): void {
    for (const byte of chunk) {
      if (byte === LF || byte === CR) {
        const line = this.#dropping ? '' : this.#line;
        this.discard();
        if (line !== '') this.#onLine(line);
      } else if (!this.#dropping) {
        if (this.#line.length < this.longest) {
          this.#line += String.fromCharCode(byte);
        } else {
          this.#line = '';
          this.#dropping = true;
          this.#onOverlong();
        }
      }
    }
  }
}
