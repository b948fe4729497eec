import type { DeviceFault } from '../fault.ts';
import type { ByteLink, LineTransport } from '../transport.ts';
import { LineSplitter, LONGEST_RESPONSE } from './line-splitter.ts';
import { say } from '../sentences.ts';

/** Lines over any byte link: the transport of WebSerial and of the practice instrument. */
export class LineLink implements LineTransport {
  onLine: ((line: string) => void) | undefined;
  onDown: ((fault: DeviceFault) => void) | undefined;
  onOverlong: (() => void) | undefined;
  readonly #link: ByteLink;
  readonly #splitter: LineSplitter;

  constructor(link: ByteLink, longest = LONGEST_RESPONSE) {
    this.#link = link;
    this.#splitter = new LineSplitter(
      longest,
      (line) => this.onLine?.(line),
      () => this.onOverlong?.(),
    );
    link.onBytes = (bytes) => this.#splitter.push(bytes);
    link.onDown = (fault) => {
      this.#splitter.discard();
      this.onDown?.(fault);
    };
  }

  get name(): string {
    return this.#link.name;
  }

  get isOpen(): boolean {
    return this.#link.isOpen;
  }

  open(): Promise<void> {
    return this.#link.open();
  }

  write(line: string): Promise<void> {
    return this.#link.write(asciiBytes(`${line}\n`));
  }

  discardPartial(): void {
    this.#splitter.discard();
  }

  close(): Promise<void> {
    return this.#link.close();
  }
}

/** Program messages are ASCII; anything else is a mistake of the program, not of the head. */
export function asciiBytes(text: string): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code > 0x7e) throw new RangeError(say('ascii', { code }));
    bytes[i] = code;
  }
  return bytes;
}
