import { randomUUID } from 'node:crypto';
import { DeviceFault } from '../../src/device/fault.ts';
import type { LineTransport } from '../../src/device/transport.ts';
import type { ServerEvent } from '../api/events.ts';
import { notFound } from '../problem.ts';
import { say } from '../api/sentences/instrument.ts';

type PortEvent = Extract<ServerEvent, { type: 'port' }>;
/** What the page is told; it alone can reach its cable. */
type Tell = (event: PortEvent) => void;

/**
 * A head on the cable of the computer whose browser shows the page. The driver is here, as for any port: lines to the
 * head go to that page as events, lines from the head come back by HTTP, and the page only hands them on. A page that
 * is gone answers nothing, which the driver notices as it notices a silent head.
 */
class BrowserPort implements LineTransport {
  readonly name: string;
  readonly connection: string;
  isOpen = false;
  onLine: ((line: string) => void) | undefined;
  onDown: ((fault: DeviceFault) => void) | undefined;
  onOverlong: (() => void) | undefined;
  readonly #tell: Tell;
  readonly #closed: () => void;
  #used = false;

  constructor(connection: string, name: string, tell: Tell, closed: () => void) {
    this.connection = connection;
    this.name = name;
    this.#tell = tell;
    this.#closed = closed;
  }

  /** Not handed to a driver before: a transport serves one connection. */
  get isFresh(): boolean {
    return !this.#used;
  }

  /** The page has opened it already. */
  async open(): Promise<void> {
    this.#used = true;
    this.isOpen = true;
  }

  async write(line: string): Promise<void> {
    if (!this.isOpen) throw new DeviceFault('disconnected', { port: this.name });
    this.#tell({ type: 'port', connection: this.connection, do: 'send', line });
  }

  discardPartial(): void {
    this.#tell({ type: 'port', connection: this.connection, do: 'discard', line: '' });
  }

  async close(): Promise<void> {
    if (this.isOpen) this.#tell({ type: 'port', connection: this.connection, do: 'close', line: '' });
    this.isOpen = false;
    this.#closed();
  }

  /** The page says that the cable is out. */
  lose(): void {
    const wasOpen = this.isOpen;
    this.isOpen = false;
    this.#closed();
    if (wasOpen) this.onDown?.(new DeviceFault('disconnected', { port: this.name }));
  }
}

/** The ports that pages have opened for the bench, newest last. */
export class BrowserPorts {
  readonly #tell: Tell;
  readonly #ports = new Map<string, BrowserPort>();

  constructor(tell: Tell) {
    this.#tell = tell;
  }

  /** A page has opened a port. @returns the name of the connection */
  announce(name: string): string {
    const connection = randomUUID();
    const closed = (): void => void this.#ports.delete(connection);
    this.#ports.set(connection, new BrowserPort(connection, name, this.#tell, closed));
    return connection;
  }

  /** @throws HttpProblem when no page holds it any more */
  transport(connection: string): LineTransport {
    return this.#held(connection);
  }

  /** Ports announced since and not in use: where a head that was pulled out may have come back. */
  fresh(): LineTransport[] {
    return [...this.#ports.values()].filter((port) => port.isFresh).toReversed();
  }

  /** What came from the head. @throws HttpProblem when the bench has let go of it */
  hear(connection: string, heard: { lines: readonly string[]; overlong: boolean; gone: boolean }): void {
    const port = this.#held(connection);
    for (const line of heard.lines) port.onLine?.(line);
    if (heard.overlong) port.onOverlong?.();
    if (heard.gone) port.lose();
  }

  #held(connection: string): BrowserPort {
    const port = this.#ports.get(connection);
    if (port) return port;
    throw notFound(say('port-gone'));
  }
}
