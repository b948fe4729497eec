import { sleep } from '../clock.ts';
import type { Clock } from '../clock.ts';
import { DeviceFault, isDeviceFault } from '../fault.ts';
import type { LineTransport } from '../transport.ts';
import { connectHead } from './connect.ts';
import type { ConnectOptions } from './connect.ts';
import type { Head } from './head.ts';

/** Whom to look for after the cable was pulled. */
export interface WantedHead {
  /** `0` when the head has none: then only the port it was on counts. */
  readonly serial: string;
  /** The port it was on. */
  readonly port: string;
}

export type LinkState =
  | { readonly state: 'idle' }
  /** `waiting`: the port cannot be had yet; `disconnect` ends the wait. */
  | { readonly state: 'connecting'; readonly port: string; readonly waiting?: DeviceFault }
  | { readonly state: 'ready'; readonly head: Head }
  /** The head is gone; it is looked for until it is back or `disconnect` is called. */
  | { readonly state: 'searching'; readonly fault: DeviceFault; readonly tries: number };

export interface LinkOptions extends ConnectOptions {
  /** Fresh transports the head may have come back on. */
  readonly find: (wanted: WantedHead) => Promise<readonly LineTransport[]>;
  /** Pause between two searches, ms. Default 1000. */
  readonly searchEveryMs?: number;
}

/**
 * Keeps one head connected: after a pulled cable it looks for the same serial number under whatever name the port has
 * now, and sets it as it was. Each return gives a new Head object through `onState`: listen to it and arm its button
 * anew. Without hardware `find` gives practice heads; for ports it is made by serial/serial-search.ts.
 */
export class HeadLink {
  onState: ((state: LinkState) => void) | undefined;
  readonly #clock: Clock;
  readonly #options: LinkOptions;
  #state: LinkState = { state: 'idle' };
  /** Grows with each connect and disconnect: a search of an earlier time gives up. */
  #era = 0;
  #opening: LineTransport | undefined;

  constructor(clock: Clock, options: LinkOptions) {
    this.#clock = clock;
    this.#options = options;
  }

  get state(): LinkState {
    return this.#state;
  }

  get head(): Head | undefined {
    return this.#state.state === 'ready' ? this.#state.head : undefined;
  }

  /** Connects for the first time, or to another head. @throws DeviceFault those of `connectHead` */
  async connect(transport: LineTransport): Promise<Head> {
    await this.disconnect();
    const era = ++this.#era;
    const port = transport.name;
    this.#tell({ state: 'connecting', port });
    this.#opening = transport;
    transport.onWaiting = (waiting) => {
      if (era === this.#era) this.#tell({ state: 'connecting', port, waiting });
    };
    try {
      const head = await connectHead(transport, this.#clock, this.#options);
      if (!(await this.#adopt(head, era))) throw new DeviceFault('disconnected', { port: transport.name });
      return head;
    } catch (error) {
      if (era === this.#era) this.#tell({ state: 'idle' });
      throw error;
    } finally {
      if (this.#opening === transport) this.#opening = undefined;
    }
  }

  /** Closes the head, ends a connection under way, or ends the search for it. */
  async disconnect(): Promise<void> {
    this.#era++;
    const { head } = this;
    if (this.#state.state !== 'idle') this.#tell({ state: 'idle' });
    const opening = this.#opening;
    this.#opening = undefined;
    await opening?.close();
    await head?.close();
  }

  /** @returns `false` when `disconnect` came in between; the head is closed then */
  async #adopt(head: Head, era: number): Promise<boolean> {
    if (era !== this.#era || !head.isConnected) {
      await head.close();
      return false;
    }
    head.on('down', (fault) => {
      if (era === this.#era) void this.#search(head, fault, era);
    });
    this.#tell({ state: 'ready', head });
    return true;
  }

  async #search(lost: Head, fault: DeviceFault, era: number): Promise<void> {
    const wanted = { serial: lost.identity.serial, port: lost.portName };
    const { gain, apertureS, averages } = lost.settings;
    const options = { ...this.#options, settings: { gain, apertureS, averages } };
    for (let tries = 0; era === this.#era; tries++) {
      this.#tell({ state: 'searching', fault, tries });
      await sleep(this.#clock, this.#options.searchEveryMs ?? 1000);
      for (const transport of await this.#candidates(wanted)) {
        if (era !== this.#era) return;
        const head = await this.#tryOne(transport, wanted, options);
        if (head && (await this.#adopt(head, era))) return;
      }
    }
  }

  async #candidates(wanted: WantedHead): Promise<readonly LineTransport[]> {
    try {
      const found = await this.#options.find(wanted);
      return wanted.serial === '0' ? found.filter((transport) => transport.name === wanted.port) : found;
    } catch {
      return []; // a list that fails is an empty one: the next search asks again
    }
  }

  async #tryOne(
    transport: LineTransport,
    wanted: WantedHead,
    options: ConnectOptions,
  ): Promise<Head | undefined> {
    try {
      return await connectHead(transport, this.#clock, { ...options, serial: wanted.serial });
    } catch (error) {
      if (!isDeviceFault(error)) throw error;
      return undefined; // missing, busy, another head: the search goes on
    }
  }

  #tell(state: LinkState): void {
    this.#state = state;
    this.onState?.(state);
  }
}
