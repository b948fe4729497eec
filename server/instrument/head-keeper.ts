import type { DeviceFault } from '../../src/device/fault.ts';
import type { Head } from '../../src/device/head/head.ts';
import { HeadLink } from '../../src/device/head/head-link.ts';
import { PracticeHead } from '../../src/device/practice/practice-head.ts';
import { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import type { FindHead } from '../../src/device/serial/serial-search.ts';
import type { LineTransport } from '../../src/device/transport.ts';
import type { Connect } from '../api/instrument.ts';
import type { InstrumentOptions } from './bench-reading.ts';

type KeeperOptions = Pick<InstrumentOptions, 'clock' | 'openPort' | 'searchPort' | 'browserPorts'>;

export interface KeeperListener {
  /** @param again it was lost and came back by itself */
  readonly ready: (head: Head, again: boolean) => void;
  /** The port cannot be had yet and is waited for. */
  readonly waiting: (fault: DeviceFault) => void;
  /** Its cable is out, or it fell silent; it is looked for from now on. */
  readonly lost: (fault: DeviceFault) => void;
}

/**
 * The lamp of the practice head is taken to have been on for half a minute (2 % x exp(-30/15)). It still settles before
 * one's eyes, in half a minute on the white tile, but stays within what two whites may differ by: nobody's first
 * practice readings are sent back for the sake of a lamp that is not there.
 */
const WARM = { warmUp: 0.003 };

/** Keeps the one head of the bench connected, and finds it again by itself under whatever name its port has then. */
export class HeadKeeper {
  readonly #options: KeeperOptions;
  readonly #listener: KeeperListener;
  #link: HeadLink | undefined;
  #practice: PracticeInstrument | undefined;
  #transport: Connect['transport'] = 'serial';

  constructor(options: KeeperOptions, listener: KeeperListener) {
    this.#options = options;
    this.#listener = listener;
  }

  get practice(): PracticeInstrument | undefined {
    return this.#practice;
  }

  /** How the head is, or was last, connected. */
  get transport(): Connect['transport'] {
    return this.#transport;
  }

  /** @throws DeviceFault when no head answers there */
  async connect(wanted: Connect): Promise<Head> {
    this.#transport = wanted.transport;
    const { transport, find } = await this.#wayTo(wanted);
    const link = new HeadLink(this.#options.clock, { find });
    this.#link = link;
    let lost = false;
    link.onState = (state) => {
      if (this.#link !== link) return;
      if (state.state === 'connecting') {
        if (state.waiting) this.#listener.waiting(state.waiting);
      } else if (state.state === 'searching' && !lost) {
        lost = true;
        this.#listener.lost(state.fault);
      } else if (state.state === 'ready') {
        this.#listener.ready(state.head, lost);
        lost = false;
      }
    };
    try {
      return await link.connect(transport);
    } catch (error) {
      if (this.#link === link) this.#practice = undefined;
      throw error;
    }
  }

  async disconnect(): Promise<void> {
    const link = this.#link;
    this.#link = undefined;
    this.#practice = undefined;
    await link?.disconnect();
  }

  async #wayTo(wanted: Connect): Promise<{ transport: LineTransport; find: FindHead }> {
    if (wanted.transport === 'serial') {
      const { path, baudRate = 115_200 } = wanted;
      const find = await this.#options.searchPort(path, baudRate);
      return { transport: await this.#options.openPort(path, baudRate), find };
    }
    if (wanted.transport === 'browser') {
      const { browserPorts } = this.#options;
      return { transport: browserPorts.transport(wanted.connection), find: async () => browserPorts.fresh() };
    }
    const variant = wanted.kind === 'bands' ? 'bands-8' : 'spectral-36';
    const practice = new PracticeInstrument(this.#options.clock, {
      variant,
      seed: wanted.seed ?? 1,
      traits: WARM,
    });
    this.#practice = practice;
    return { transport: new PracticeHead(practice), find: async () => [new PracticeHead(practice)] };
  }
}
