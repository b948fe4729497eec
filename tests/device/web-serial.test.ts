/**
 * The browser's serial port as a second transport: an injected port made of the streams a browser hands out (Node has
 * the same WHATWG streams), with the practice instrument behind it.
 */
import { describe, expect, it } from 'vitest';
import { connectHead } from '../../src/device/head/connect.ts';
import { PracticeLink } from '../../src/device/practice/practice-head.ts';
import { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import { WebSerialLink, webSerialTransport } from '../../src/device/webserial/web-serial-link.ts';
import type { WebSerialPort } from '../../src/device/webserial/web-serial-link.ts';
import { SimulatedClock } from './simulated-clock.ts';

/** As a browser's SerialPort behaves: streams while open, null once the device is lost. */
class BrowserPort implements WebSerialPort {
  readable: ReadableStream<Uint8Array> | null = null;
  writable: WritableStream<Uint8Array<ArrayBuffer>> | null = null;
  readonly link: PracticeLink;
  opened = 0;
  closed = 0;
  #controller: ReadableStreamDefaultController<Uint8Array> | undefined;

  constructor(clock: SimulatedClock) {
    this.link = new PracticeLink(new PracticeInstrument(clock));
  }

  getInfo() {
    return { usbVendorId: 0x1209, usbProductId: 0x0001 };
  }

  async open(options: { baudRate: number }): Promise<void> {
    expect(options.baudRate).toBe(115_200);
    this.opened++;
    await this.link.open();
    this.#newReadable();
    this.link.onBytes = (bytes) => this.#controller?.enqueue(bytes);
    this.writable = new WritableStream({ write: (bytes) => this.link.write(bytes) });
  }

  async close(): Promise<void> {
    if (this.readable?.locked || this.writable?.locked) throw new TypeError('Cannot close a locked port.');
    this.closed++;
    await this.link.close();
  }

  /** A framing error: the reader fails, the port goes on with a new stream. */
  hiccup(): void {
    const broken = this.#controller;
    this.#newReadable();
    broken?.error(new DOMException('framing', 'FramingError'));
  }

  lose(): void {
    const broken = this.#controller;
    this.readable = null;
    this.writable = null;
    broken?.error(new DOMException('The device has been lost.', 'NetworkError'));
  }

  #newReadable(): void {
    this.readable = new ReadableStream({ start: (controller) => void (this.#controller = controller) });
  }
}

async function connected() {
  const clock = new SimulatedClock();
  const port = new BrowserPort(clock);
  const head = await clock.run(connectHead(webSerialTransport(port), clock));
  return { clock, port, head };
}

describe("a head on a browser's serial port", () => {
  it('is found and read by the same driver', async () => {
    const { clock, head } = await connected();
    expect(head.portName).toBe('USB port 1209:0001');
    expect((await clock.run(head.read())).counts).toHaveLength(9);
  });
  it('is let go of: no stream stays locked', async () => {
    const { clock, port, head } = await connected();
    await clock.run(head.close());
    expect(port.closed).toBe(1);
  });
  it('goes on after a framing error', async () => {
    const { clock, port, head } = await connected();
    port.hiccup();
    expect((await clock.run(head.read())).frame).toBe(1);
  });
  it('that is unplugged is told as such', async () => {
    const { clock, port, head } = await connected();
    const down = new Promise((resolve) => head.on('down', resolve));
    port.lose();
    expect(await clock.run(down)).toMatchObject({ kind: 'disconnected' });
    await expect(clock.run(head.read())).rejects.toMatchObject({ kind: 'disconnected' });
  });
  it.each([
    ['SecurityError', 'permission'],
    ['InvalidStateError', 'busy'],
    ['NetworkError', 'busy-or-denied'],
    ['TypeError', 'open-failed'],
  ])('a refusal by %s is the fault %s', async (name, kind) => {
    const port = new BrowserPort(new SimulatedClock());
    port.open = () => Promise.reject(new DOMException('refused', name));
    await expect(new WebSerialLink(port).open()).rejects.toMatchObject({ kind });
  });
});
