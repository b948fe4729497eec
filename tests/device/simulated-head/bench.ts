import { test } from 'vitest';
import { connectHead } from '../../../src/device/head/connect.ts';
import type { ConnectOptions } from '../../../src/device/head/connect.ts';
import type { Head } from '../../../src/device/head/head.ts';
import { SerialTransport } from '../../../src/device/serial/serial-transport.ts';
import { systemClock } from '../../../src/device/serial/system-clock.ts';
import { simulatedHead } from './simulated-head.ts';
import type { TerminalScript } from './simulated-head.ts';

/** One simulated head on its own terminal and the driver connected to it; cleared away when the test ends. */
export class Bench {
  #terminal: TerminalScript | undefined;
  #head: Head | undefined;

  get terminal(): TerminalScript {
    if (!this.#terminal) throw new Error('Start a simulated head first.');
    return this.#terminal;
  }

  /** Starts the simulated head and gives a closed transport to it. */
  async started(args: readonly string[] = []): Promise<SerialTransport> {
    this.#terminal = await simulatedHead(...args);
    return new SerialTransport(this.#terminal.path);
  }

  async plugged(args: readonly string[] = [], options: ConnectOptions = {}): Promise<Head> {
    this.#head = await connectHead(await this.started(args), systemClock, options);
    return this.#head;
  }

  async clear(): Promise<void> {
    await this.#head?.close();
    await this.#terminal?.stop();
  }
}

/** `it` with a bench of its own for each test, so that tests may run beside each other. */
export const it = test.extend<{ bench: Bench }>({
  // oxlint-disable-next-line no-empty-pattern -- the fixture needs no other one, and Vitest wants the pattern
  bench: async ({}, use) => {
    const bench = new Bench();
    await use(bench);
    await bench.clear();
  },
});
