import { DeviceFault } from '../fault.ts';
import { LineLink } from '../framing/line-link.ts';
import type { ByteLink, LineTransport } from '../transport.ts';
import { say } from '../sentences.ts';

/**
 * The members of a browser's serial port that are used here (WICG Web Serial, draft community group report). Declared
 * here and injected, so that this room needs no browser: `navigator.serial.requestPort()` is the page's business.
 */
export interface WebSerialPort {
  readonly readable: WebByteSource | null;
  readonly writable: WebByteSink | null;
  open(options: { readonly baudRate: number; readonly bufferSize?: number }): Promise<void>;
  close(): Promise<void>;
  getInfo(): { readonly usbVendorId?: number | undefined; readonly usbProductId?: number | undefined };
}

export interface WebByteSource {
  getReader(): WebByteReader;
}

export interface WebByteReader {
  read(): Promise<{ readonly done: boolean; readonly value?: Uint8Array | undefined }>;
  cancel(): Promise<void>;
  releaseLock(): void;
}

export interface WebByteSink {
  getWriter(): { write(bytes: Uint8Array<ArrayBuffer>): Promise<void>; releaseLock(): void };
}

const BAUD_RATE = 115_200;
/** The browser's own default of 255 bytes is less than one frame of a spectral head. */
const BUFFER_BYTES = 8192;

/** Bytes over a browser's serial port. One object is one connection. */
export class WebSerialLink implements ByteLink {
  readonly name: string;
  onBytes: ((bytes: Uint8Array) => void) | undefined;
  onDown: ((fault: DeviceFault) => void) | undefined;
  readonly #port: WebSerialPort;
  #reader: WebByteReader | undefined;
  #writing: Promise<void> = Promise.resolve();
  #pump: Promise<void> = Promise.resolve();
  #open = false;

  constructor(port: WebSerialPort) {
    this.#port = port;
    this.name = portName(port);
  }

  get isOpen(): boolean {
    return this.#open;
  }

  async open(): Promise<void> {
    try {
      await this.#port.open({ baudRate: BAUD_RATE, bufferSize: BUFFER_BYTES });
    } catch (error) {
      throw openingFault(error, this.name);
    }
    if (!this.#port.readable || !this.#port.writable)
      throw new DeviceFault('open-failed', { port: this.name });
    this.#open = true;
    this.#pump = this.#read();
  }

  async write(bytes: Uint8Array): Promise<void> {
    const sink = this.#open ? this.#port.writable : null;
    if (!sink) throw new DeviceFault('disconnected', { port: this.name });
    // One after another: a stream with a writer on it hands out no second one.
    const sent = this.#writing.then(async () => {
      const writer = sink.getWriter();
      try {
        await writer.write(Uint8Array.from(bytes));
      } finally {
        writer.releaseLock();
      }
    });
    this.#writing = sent.catch(() => undefined);
    try {
      await sent;
    } catch (error) {
      throw new DeviceFault('disconnected', { port: this.name }, { cause: error });
    }
  }

  async close(): Promise<void> {
    if (!this.#open) return;
    this.#open = false;
    try {
      await this.#reader?.cancel(); // a port with a locked stream cannot be closed
      await this.#pump;
      await this.#port.close();
    } catch {
      // the port is gone already
    }
  }

  /** A break or framing error ends one reader, and a new one goes on; without a readable the port is gone. */
  async #read(): Promise<void> {
    let cause: unknown;
    while (this.#open && this.#port.readable) {
      const reader = this.#port.readable.getReader();
      this.#reader = reader;
      try {
        for (;;) {
          const { done, value } = await reader.read();
          if (done) break;
          if (value) this.onBytes?.(value);
        }
        if (this.#open) break;
      } catch (error) {
        cause = error;
      } finally {
        reader.releaseLock();
      }
    }
    if (!this.#open) return;
    this.#open = false;
    this.onDown?.(new DeviceFault('disconnected', { port: this.name }, { cause }));
  }
}

/** A transport for `connectHead` from a port the user has chosen in the browser. */
export function webSerialTransport(port: WebSerialPort): LineTransport {
  return new LineLink(new WebSerialLink(port));
}

function portName(port: WebSerialPort): string {
  const { usbVendorId, usbProductId } = port.getInfo();
  const hex = (id: number | undefined): string => (id ?? 0).toString(16).padStart(4, '0');
  return usbVendorId === undefined
    ? say('browser-port')
    : say('usb-port', { vendor: hex(usbVendorId), product: hex(usbProductId) });
}

function openingFault(error: unknown, port: string): DeviceFault {
  const name = error instanceof Error ? error.name : '';
  const seen = error instanceof Error ? error.message : String(error);
  if (name === 'SecurityError') return new DeviceFault('permission', { port, seen }, { cause: error });
  if (name === 'InvalidStateError') return new DeviceFault('busy', { port, seen }, { cause: error });
  if (name === 'NetworkError') return new DeviceFault('busy-or-denied', { port, seen }, { cause: error });
  return new DeviceFault('open-failed', { port, seen }, { cause: error });
}
