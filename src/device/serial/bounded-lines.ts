import { Transform } from 'node:stream';
import type { TransformCallback } from 'node:stream';
import { ReadlineParser } from '@serialport/parser-readline';
import { LineSplitter, LONGEST_RESPONSE } from '../framing/line-splitter.ts';

/**
 * Stands in front of ReadlineParser, which has no length limit and re-joins its whole buffer at each chunk: hands on
 * whole lines of bounded length only, ended by LF whatever the device ends them with. Bytes are latin1 throughout.
 */
class ByteLimiter extends Transform {
  readonly #splitter: LineSplitter;

  constructor(longest: number, onOverlong: () => void) {
    super();
    this.#splitter = new LineSplitter(longest, (line) => this.push(`${line}\n`, 'latin1'), onOverlong);
  }

  discard(): void {
    this.#splitter.discard();
  }

  override _transform(chunk: Buffer, _encoding: BufferEncoding, done: TransformCallback): void {
    this.#splitter.push(chunk);
    done();
  }
}

/** Lines out of a byte stream: limiter, then ReadlineParser. One for each connection, never used again. */
export class BoundedLines {
  readonly #limiter: ByteLimiter;

  constructor(onLine: (line: string) => void, onOverlong: () => void, longest = LONGEST_RESPONSE) {
    this.#limiter = new ByteLimiter(longest, onOverlong);
    // Object mode on the reading side keeps two lines of one chunk apart.
    const parser = new ReadlineParser({ delimiter: '\n', encoding: 'latin1', readableObjectMode: true });
    parser.on('data', (line: string | Buffer) => {
      const text = typeof line === 'string' ? line : line.toString('latin1');
      if (text !== '') onLine(text);
    });
    this.#limiter.pipe(parser);
  }

  push(chunk: Buffer): void {
    this.#limiter.write(chunk);
  }

  discardPartial(): void {
    this.#limiter.discard();
  }

  /** Ends the streams; the part of a line received so far is forgotten, not handed out. */
  end(): void {
    this.#limiter.discard();
    this.#limiter.destroy();
  }
}
