/**
 * A head on this computer's own cable, opened by the browser (Web Serial; Chromium-based browsers only) and handed to
 * the bench, wherever that runs: what the bench sends is written to the port, what the head answers is handed back.
 * The driver that checks every answer is the bench's own, the same as for a port of the bench's computer.
 */
import { type WebSerialPort, webSerialTransport } from '../../../src/device/webserial/web-serial-link.ts';
import type { LineTransport } from '../../../src/device/transport.ts';
import { call } from '../api/call.ts';
import { listen } from '../api/events.ts';
import { ProblemError } from '../api/problem.ts';

interface BrowserSerial extends EventTarget {
  requestPort(): Promise<WebSerialPort>;
}

/** Absent outside Chromium, and on pages that did not come over HTTPS or from this computer. */
function browserSerial(): BrowserSerial | undefined {
  return (navigator as { readonly serial?: BrowserSerial }).serial;
}

export const canOpenPorts = (): boolean => browserSerial() !== undefined;

/**
 * Asks the person for a port, opens it and tells the bench. Must be called from a click.
 * @returns the connection to connect with, undefined when nothing was chosen
 * @throws DeviceFault when it cannot be opened; ProblemError of the bench
 */
export async function openBrowserPort(): Promise<string | undefined> {
  const serial = browserSerial();
  if (!serial) return undefined;
  let port: WebSerialPort;
  try {
    port = await serial.requestPort();
  } catch (cause) {
    if (cause instanceof DOMException && cause.name === 'NotFoundError') return undefined;
    throw cause;
  }
  return handToBench(serial, port);
}

async function handToBench(serial: BrowserSerial, port: WebSerialPort): Promise<string> {
  const transport = webSerialTransport(port);
  await transport.open();
  let connection: string;
  try {
    ({ connection } = await call('announceBrowserPort', { body: { name: transport.name } }));
  } catch (cause) {
    await transport.close();
    throw cause;
  }
  const relay = new Relay(transport, connection);
  transport.onDown = () => {
    relay.end({ gone: true });
    comesBack(serial, port);
  };
  return connection;
}

/** Plugged in again, the same port is opened and handed over by itself; the bench looks for its head there. */
function comesBack(serial: BrowserSerial, port: WebSerialPort): void {
  const back = (event: Event): void => {
    // It bubbles up from the port itself.
    if ((event.target as unknown) !== port) return;
    serial.removeEventListener('connect', back);
    handToBench(serial, port).catch(() => undefined); // the person connects by hand then
  };
  serial.addEventListener('connect', back);
}

interface Heard {
  readonly lines: string[];
  readonly overlong?: boolean;
  readonly gone?: boolean;
}

/** Lines both ways, in order: one request at a time. */
class Relay {
  readonly #transport: LineTransport;
  readonly #connection: string;
  readonly #stop: () => void;
  #lines: string[] = [];
  #sent: Promise<void> = Promise.resolve();

  constructor(transport: LineTransport, connection: string) {
    this.#transport = transport;
    this.#connection = connection;
    transport.onLine = (line) => {
      this.#lines.push(line);
      this.#hand({});
    };
    transport.onOverlong = () => this.#hand({ overlong: true });
    this.#stop = listen('port', (event) => {
      if (event.connection !== connection) return;
      if (event.do === 'send')
        transport.write(event.line).catch(() => undefined); // its loss is told by onDown
      else if (event.do === 'discard') transport.discardPartial();
      else this.end({});
    });
  }

  /** The last that is handed on; the port is closed. */
  end(last: Omit<Heard, 'lines'>): void {
    this.#stop();
    if (last.gone) this.#hand(last);
    void this.#transport.close();
  }

  #hand(heard: Omit<Heard, 'lines'>): void {
    this.#sent = this.#sent.then(async () => {
      const lines = this.#lines.splice(0);
      if (lines.length === 0 && !heard.overlong && !heard.gone) return;
      try {
        const params = { connection: this.#connection };
        await call('hearBrowserPort', { params, body: { lines, ...heard } });
      } catch (cause) {
        // The bench has let go of it: free the port for others. While it is away, the driver asks again.
        if (cause instanceof ProblemError && cause.status === 404) this.end({});
      }
    });
  }
}
