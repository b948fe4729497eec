import { existsSync, realpathSync } from 'node:fs';
import { within } from '../clock.ts';
import type { Cancel, Clock } from '../clock.ts';
import { DeviceFault } from '../fault.ts';
import type { LineTransport } from '../transport.ts';
import { BoundedLines } from './bounded-lines.ts';
import { openFault } from './open-fault.ts';
import { loadSerialLibrary } from './serial-library.ts';
import type { PortHandle, SerialLibrary } from './serial-library.ts';
import { systemClock } from './system-clock.ts';
import { say } from '../sentences.ts';

export interface SerialOptions {
  /** Default 115200. Never 1200: many boards take that as "enter the boot loader". */
  readonly baudRate?: number;
  readonly clock?: Clock;
  readonly library?: () => Promise<SerialLibrary>;
  /** How often the port's file is looked for, ms. Default 1000. */
  readonly lookEveryMs?: number;
  /** How long a port that another program holds is waited for, ms. Default 30 000. */
  readonly busyMs?: number;
}

const OPEN_MS = 3000;
const WRITE_MS = 1000;
const CLOSE_MS = 2000;
/** A modem manager holds a new port for up to half a minute (hardware-notes/ports.md). */
const BUSY_MS = 30_000;
/** The lock of the connection before lives on for a moment only: the first tries come soon after each other. */
const BUSY_PAUSES_MS = [200, 200, 600];
const LATER_PAUSE_MS = 1000;

/**
 * Lines over a serial port, by serialport. One object is one connection. Unplugging is noticed in three ways: the
 * port's own close event; a write that fails (the heartbeat sees to that); and the port's file having gone, since
 * serialport 13 can miss a hang-up while data is flowing and then spin without any event.
 */
export class SerialTransport implements LineTransport {
  readonly name: string;
  onLine: ((line: string) => void) | undefined;
  onDown: ((fault: DeviceFault) => void) | undefined;
  onOverlong: (() => void) | undefined;
  onWaiting: ((fault: DeviceFault) => void) | undefined;
  readonly openWithinMs: number;
  readonly #options: SerialOptions;
  readonly #clock: Clock;
  readonly #lines: BoundedLines;
  #port: PortHandle | undefined;
  #look: Cancel | undefined;
  #ended = false;
  /** Ends the pause between two tries. */
  #hurry: (() => void) | undefined;

  constructor(path: string, options: SerialOptions = {}) {
    // macOS lists the dial-in device; the call-out one is the one to open.
    this.name = process.platform === 'darwin' ? path.replace(/^\/dev\/tty\./, '/dev/cu.') : path;
    this.#options = options;
    this.#clock = options.clock ?? systemClock;
    this.openWithinMs = (options.busyMs ?? BUSY_MS) + 2 * OPEN_MS;
    this.#lines = new BoundedLines(
      (line) => this.onLine?.(line),
      () => this.onOverlong?.(),
    );
  }

  get isOpen(): boolean {
    return !this.#ended && this.#port?.isOpen === true;
  }

  async open(): Promise<void> {
    if (this.#port || this.#ended) throw new Error(say('opened-before', { port: this.name }));
    const library = await (this.#options.library ?? loadSerialLibrary)();
    const until = this.#clock.now() + (this.#options.busyMs ?? BUSY_MS);
    for (let attempt = 0; !this.#port && !this.#ended; attempt++) {
      try {
        this.#port = await this.#openOnce(library);
      } catch (error) {
        const fault = error instanceof DeviceFault ? error : openFault(error, this.name);
        const left = until - this.#clock.now();
        if (fault.kind !== 'busy' || left <= 0) throw fault;
        if (attempt === BUSY_PAUSES_MS.length) {
          const allowed = `${Math.round((this.#options.busyMs ?? BUSY_MS) / 1000)} s`;
          this.onWaiting?.(new DeviceFault('waiting', { port: this.name, allowed }));
        }
        await this.#pause(Math.min(left, BUSY_PAUSES_MS[attempt] ?? LATER_PAUSE_MS));
      }
    }
    if (this.#ended) {
      await this.#shut();
      throw new DeviceFault('disconnected', { port: this.name });
    }
    this.#watchFile();
  }

  async write(line: string): Promise<void> {
    const port = this.#port;
    // serialport would queue a write on a closed port and send it at the next open.
    if (!port || !this.isOpen) throw new DeviceFault('disconnected', { port: this.name });
    const sent = new Promise<void>((resolve, reject) => {
      port.write(`${line}\n`, 'latin1', (error) => (error ? reject(error) : resolve()));
    });
    const gone = (): DeviceFault => new DeviceFault('disconnected', { port: this.name });
    try {
      await within(this.#clock, WRITE_MS, sent, gone);
    } catch (error) {
      throw error instanceof DeviceFault
        ? error
        : new DeviceFault('disconnected', { port: this.name }, { cause: error });
    }
  }

  discardPartial(): void {
    this.#lines.discardPartial();
  }

  async close(): Promise<void> {
    if (this.#ended && !this.#port) return;
    this.#end();
    await this.#shut();
  }

  async #openOnce(library: SerialLibrary): Promise<PortHandle> {
    const port = library.make(this.name, this.#options.baudRate ?? 115_200);
    port.on('error', () => undefined); // without a listener an error event ends the process; close tells the same
    port.on('close', (error) => this.#closed(error));
    port.on('data', (chunk) => {
      if (!this.#ended) this.#lines.push(chunk);
    });
    const opened = new Promise<void>((resolve, reject) => {
      port.open((error) => (error ? reject(error) : resolve()));
    });
    try {
      await within(this.#clock, OPEN_MS, opened, () => new DeviceFault('open-timeout', { port: this.name }));
    } catch (error) {
      // Should it open after all, it must not stay open unseen.
      opened.then(
        () => port.close(() => undefined),
        () => undefined,
      );
      throw error;
    }
    return port;
  }

  #closed(error: Error | undefined): void {
    if (this.#ended || !this.#port) return;
    this.#down(error);
  }

  #down(cause?: Error): void {
    this.#end();
    const fault = new DeviceFault('disconnected', { port: this.name }, cause ? { cause } : {});
    void this.#shut();
    this.onDown?.(fault);
  }

  /** A pause that `close` cuts short. */
  #pause(ms: number): Promise<void> {
    return new Promise((resolve) => {
      const cancel = this.#clock.after(ms, resolve);
      this.#hurry = () => {
        cancel();
        resolve();
      };
    });
  }

  #end(): void {
    this.#ended = true;
    this.#hurry?.();
    this.#look?.();
    this.#lines.end();
  }

  /** Closes within its time or drops the port: a hanging driver must not hold up the program. */
  async #shut(): Promise<void> {
    const port = this.#port;
    this.#port = undefined;
    if (!port?.isOpen) return;
    const closed = new Promise<void>((resolve) => {
      port.close(() => resolve());
    });
    const late = (): Error => new Error(say('not-closed', { port: this.name }));
    await within(this.#clock, CLOSE_MS, closed, late).catch(() => undefined);
  }

  /** Looks each second whether the port's file is still there. */
  #watchFile(): void {
    if (process.platform === 'win32') return;
    let file: string;
    try {
      file = realpathSync(this.name);
    } catch {
      return this.#down();
    }
    const look = (): void => {
      if (!existsSync(file)) return this.#down();
      this.#look = this.#clock.after(this.#options.lookEveryMs ?? 1000, look);
    };
    this.#look = this.#clock.after(this.#options.lookEveryMs ?? 1000, look);
  }
}
