import type { Cancel, Clock } from '../clock.ts';
import { DeviceFault } from '../fault.ts';
import { readChecked } from '../framing/checked-line.ts';
import type { LineTransport } from '../transport.ts';
import { say } from '../sentences.ts';

/** Time limit of a plain query, ms (protocol section 8). */
export const QUERY_MS = 1000;

/** Every line that goes over the wire, for a log or a screen. */
export type WireListener = (direction: 'sent' | 'received', line: string) => void;

interface Pending {
  readonly resolve: (text: string) => void;
  readonly reject: (fault: DeviceFault) => void;
  readonly cancel: Cancel;
  readonly asked: string;
  readonly accept: ((text: string) => boolean) | undefined;
}

/**
 * One question, one answer, over a transport. Holds at most one question; a line that nobody asked for is counted as
 * noise. Checks and removes the checksum. Knows nothing of retries: see ask.ts.
 */
export class QueryLine {
  /** Whether answers must carry a checksum. While `false`, one that does is still checked. */
  checksum = false;
  /** Lines that came without a question. */
  noiseLines = 0;
  /** Called once when the connection is lost without `close`. */
  onDown: ((fault: DeviceFault) => void) | undefined;
  readonly #transport: LineTransport;
  readonly #clock: Clock;
  readonly #wire: WireListener | undefined;
  #pending: Pending | undefined;

  constructor(transport: LineTransport, clock: Clock, wire?: WireListener) {
    this.#transport = transport;
    this.#clock = clock;
    this.#wire = wire;
    transport.onLine = (line) => this.#received(line);
    transport.onOverlong = () => this.#fail(new DeviceFault('overlong', this.#evidence()));
    transport.onDown = (fault) => {
      this.#fail(new DeviceFault('disconnected', this.#evidence(), { cause: fault }));
      this.onDown?.(fault);
    };
  }

  get isOpen(): boolean {
    return this.#transport.isOpen;
  }

  get portName(): string {
    return this.#transport.name;
  }

  get clock(): Clock {
    return this.#clock;
  }

  /** Sends a message that has no answer. */
  async send(text: string): Promise<void> {
    if (!this.#transport.isOpen) throw new DeviceFault('disconnected', { port: this.#transport.name });
    this.#wire?.('sent', text);
    await this.#transport.write(text);
  }

  /**
   * Sends one query and resolves with its answer, checksum removed.
   * @param accept while probing: lines it turns down are ignored, whatever they are
   * @throws DeviceFault `timeout`, `disconnected`, `overlong`, `crc`, `no-crc`
   */
  exchange(text: string, timeoutMs: number, accept?: (text: string) => boolean): Promise<string> {
    if (this.#pending) throw new Error(say('asked-while', { text, pending: this.#pending.asked }));
    return new Promise<string>((resolve, reject) => {
      const cancel = this.#clock.after(timeoutMs, () => {
        this.#fail(
          new DeviceFault('timeout', { ...this.#evidence(), allowed: `${Math.round(timeoutMs)} ms` }),
        );
      });
      this.#pending = { resolve, reject, cancel, asked: text, accept };
      this.send(text).catch((error: unknown) => {
        const details = this.#evidence();
        this.#fail(
          error instanceof DeviceFault ? error : new DeviceFault('disconnected', details, { cause: error }),
        );
      });
    });
  }

  discardPartial(): void {
    this.#transport.discardPartial();
  }

  async close(): Promise<void> {
    this.#fail(new DeviceFault('disconnected', this.#evidence()));
    await this.#transport.close();
  }

  #evidence(): { port: string; asked?: string } {
    const port = this.#transport.name;
    return this.#pending ? { port, asked: this.#pending.asked } : { port };
  }

  #received(line: string): void {
    this.#wire?.('received', line);
    const pending = this.#pending;
    if (!pending) {
      this.noiseLines++;
      return;
    }
    const checked = readChecked(line);
    if (pending.accept && !(checked.state !== 'damaged' && pending.accept(checked.text))) {
      this.noiseLines++;
      return;
    }
    if (checked.state === 'good' || (checked.state === 'unchecked' && !this.checksum)) {
      this.#settle()?.resolve(checked.text);
    } else {
      this.#fail(
        new DeviceFault(checked.state === 'damaged' ? 'crc' : 'no-crc', { ...this.#evidence(), seen: line }),
      );
    }
  }

  #fail(fault: DeviceFault): void {
    this.#settle()?.reject(fault);
  }

  #settle(): Pending | undefined {
    const pending = this.#pending;
    pending?.cancel();
    this.#pending = undefined;
    return pending;
  }
}
