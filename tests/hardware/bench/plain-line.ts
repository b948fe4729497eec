import { constants, openSync } from 'node:fs';
import { ReadStream } from 'node:tty';

/** Lines over a terminal device with nothing in between: no driver, no retries. */
export class PlainLine {
  readonly #stream: ReadStream;
  #received = '';
  #wake: (() => void) | undefined;

  constructor(path: string) {
    this.#stream = new ReadStream(
      openSync(path, constants.O_RDWR | constants.O_NOCTTY | constants.O_NONBLOCK),
    );
    this.#stream.setRawMode(true);
    this.#stream.on('data', (chunk: Buffer) => {
      this.#received += chunk.toString('latin1');
      this.#wake?.();
    });
    this.#stream.on('error', () => undefined); // a pulled cable; the silence tells
  }

  send(text: string): void {
    this.#stream.write(text, 'latin1');
  }

  /** Sends a message with its LF and resolves with the next line, without its end. */
  ask(message: string): Promise<string> {
    this.send(`${message}\n`);
    return this.line();
  }

  async line(withinMs = 3000): Promise<string> {
    const end = Date.now() + withinMs;
    for (;;) {
      const at = this.#received.indexOf('\n');
      if (at >= 0) {
        const line = this.#received.slice(0, at);
        this.#received = this.#received.slice(at + 1);
        return line;
      }
      if (Date.now() > end) throw new Error(`No line came; received so far: "${this.#received}".`);
      await this.#more(end - Date.now());
    }
  }

  /** Everything that comes until the line has been quiet for a while. */
  async quiet(ms = 150): Promise<string> {
    for (;;) {
      const before = this.#received.length;
      await new Promise((resolve) => setTimeout(resolve, ms));
      if (this.#received.length === before) break;
    }
    const all = this.#received;
    this.#received = '';
    return all;
  }

  close(): void {
    this.#stream.destroy();
  }

  #more(ms: number): Promise<void> {
    return new Promise((resolve) => {
      const late = setTimeout(resolve, Math.max(1, ms));
      this.#wake = () => (clearTimeout(late), resolve());
    });
  }
}
