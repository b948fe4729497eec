import type { Clock } from '../clock.ts';
import { DeviceFault } from '../fault.ts';
import { asciiBytes, LineLink } from '../framing/line-link.ts';
import { LineSplitter } from '../framing/line-splitter.ts';
import type { ByteLink, LineTransport } from '../transport.ts';
import { PracticeInstrument } from './practice-instrument.ts';
import type { PracticeOptions } from './practice-instrument.ts';

/** Far above what the desk takes, so that the desk itself says -363. */
const LONGEST_INPUT = 4096;

/**
 * The practice instrument on a wire of its own: bytes in, bytes out, as a real head on a port. One connection; the
 * instrument behind it stays and can be plugged in again through a new link.
 */
export class PracticeLink implements ByteLink {
  readonly name: string;
  readonly instrument: PracticeInstrument;
  onBytes: ((bytes: Uint8Array) => void) | undefined;
  onDown: ((fault: DeviceFault) => void) | undefined;
  #open = false;
  #work: Promise<void> = Promise.resolve();
  readonly #splitter: LineSplitter;

  constructor(instrument: PracticeInstrument, name = 'practice instrument') {
    this.instrument = instrument;
    this.name = name;
    this.#splitter = new LineSplitter(
      LONGEST_INPUT,
      (line) => this.#received(line),
      () => undefined,
    );
  }

  get isOpen(): boolean {
    return this.#open;
  }

  async open(): Promise<void> {
    this.#open = true;
  }

  async write(bytes: Uint8Array): Promise<void> {
    if (!this.#open) throw new DeviceFault('disconnected', { port: this.name });
    this.#splitter.push(bytes);
  }

  async close(): Promise<void> {
    this.#open = false;
  }

  /** Pulls the cable. */
  unplug(): void {
    if (!this.#open) return;
    this.#open = false;
    this.onDown?.(new DeviceFault('disconnected', { port: this.name }));
  }

  /** Messages are worked off one after another, as on a real head. */
  #received(line: string): void {
    this.#work = this.#work.then(async () => {
      const answer = await this.instrument.execute(line);
      if (answer !== undefined && this.#open) this.onBytes?.(asciiBytes(`${answer}\n`));
    });
  }
}

/**
 * The practice head: a LineTransport for `connectHead` that speaks the same lines as a head on a port and reads
 * whatever is placed under it. Invented paints, invented lamp: never to be taken for a measurement.
 */
export class PracticeHead extends LineLink implements LineTransport {
  readonly instrument: PracticeInstrument;
  readonly #link: PracticeLink;

  constructor(instrument: PracticeInstrument, name?: string) {
    const link = new PracticeLink(instrument, name);
    super(link);
    this.#link = link;
    this.instrument = instrument;
  }

  /** Pulls the cable. */
  unplug(): void {
    this.#link.unplug();
  }
}

/** A practice head with a new instrument in it. */
export function practiceHead(clock: Clock, options: PracticeOptions = {}): PracticeHead {
  return new PracticeHead(new PracticeInstrument(clock, options));
}
