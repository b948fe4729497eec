/** Cables pulled and heads that come back, over real pseudo-terminals. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect } from 'vitest';
import { sleep } from '../../src/device/clock.ts';
import { DeviceFault } from '../../src/device/fault.ts';
import { connectHead } from '../../src/device/head/connect.ts';
import { HeadLink } from '../../src/device/head/head-link.ts';
import type { LinkState } from '../../src/device/head/head-link.ts';
import { SerialTransport } from '../../src/device/serial/serial-transport.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import { it } from './simulated-head/bench.ts';
import { simulatedHead } from './simulated-head/simulated-head.ts';

/** Bytes of a whole frame of this head without its line end. */
const FRAME_BYTES = 96;

function nextState(link: HeadLink, wanted: LinkState['state']): Promise<LinkState> {
  return new Promise((resolve) => {
    link.onState = (state) => {
      if (state.state === wanted) resolve(state);
    };
  });
}

describe.concurrent('a pulled cable', () => {
  it('while idle is told within a second', async ({ bench }) => {
    const head = await bench.plugged();
    const down = new Promise<DeviceFault>((resolve) => head.on('down', resolve));
    await bench.terminal.command('unplug');
    expect((await down).kind).toBe('disconnected');
    expect(head.isConnected).toBe(false);
    await expect(head.read()).rejects.toMatchObject({ kind: 'disconnected' });
  });

  // Four benches beside each other, each taking every fourth byte.
  it.for([0, 1, 2, 3])(
    'at each byte of a frame (%i, +4, ...): no reading, a typed fault, and the next connection starts clean',
    async (first, { bench }) => {
      await bench.started();
      for (let bytes = first; bytes <= FRAME_BYTES; bytes += 4) {
        const head = await connectHead(new SerialTransport(bench.terminal.path), systemClock);
        await head.read();
        await bench.terminal.command(`fault unplug_at ${bytes}`);
        await expect(head.read(), `after ${bytes} bytes`).rejects.toMatchObject({ kind: 'disconnected' });
        expect(head.health.retries).toBe(0);
        await head.close();
        await bench.terminal.command('replug');
      }
    },
  );
});

describe('a cable pulled with data in flight', () => {
  it('the hang-up that serialport can miss is found, and nothing goes on spinning', async ({ bench }) => {
    await bench.started();
    for (let trial = 0; trial < 6; trial++) {
      const head = await connectHead(new SerialTransport(bench.terminal.path), systemClock, {
        heartbeatMs: 500,
      });
      const down = new Promise<DeviceFault>((resolve) => head.on('down', resolve));
      await bench.terminal.command('fault hang_up_in_flood');
      const reading = head.read().catch((error: unknown) => error);
      expect((await down).kind).toBe('disconnected');
      expect(await reading).toBeInstanceOf(DeviceFault);
      await head.close();
      await bench.terminal.command('replug');
    }
    const before = process.cpuUsage();
    await sleep(systemClock, 500);
    const used = process.cpuUsage(before);
    // A spin takes 80 % of a core for good; an idle process next to nothing.
    expect((used.user + used.system) / 1000).toBeLessThan(200);
  });
});

describe.concurrent('a head that comes back', () => {
  it('under another name is found by its serial number, with its settings', async ({ bench }) => {
    const first = await bench.started(['--serial', 'SN0007']);
    const other = await simulatedHead('--serial', 'SN0008');
    const elsewhere = join(bench.terminal.folder, 'port-renamed');
    const link = new HeadLink(systemClock, {
      searchEveryMs: 100,
      find: async () =>
        [other.path, elsewhere].filter((path) => existsSync(path)).map((path) => new SerialTransport(path)),
    });
    try {
      const head = await link.connect(first);
      await head.configure({ gain: 16, apertureS: 0.01 });
      const searching = nextState(link, 'searching');
      await bench.terminal.command('unplug');
      await searching;
      const ready = nextState(link, 'ready');
      await bench.terminal.command(`replug ${elsewhere}`);
      await ready;
      expect(link.head?.identity.serial).toBe('SN0007');
      expect(link.head?.portName).toBe(elsewhere);
      expect(await link.head?.read()).toMatchObject({ frame: 1, gain: 16, apertureS: 0.010008 });
    } finally {
      await link.disconnect();
      await other.stop();
    }
  });

  it('another head in its place is not taken for it', async ({ bench }) => {
    const first = await bench.started(['--serial', 'SN0007']);
    const other = await simulatedHead('--serial', 'SN0008');
    const link = new HeadLink(systemClock, {
      searchEveryMs: 50,
      find: async () => [new SerialTransport(other.path)],
    });
    try {
      await link.connect(first);
      await bench.terminal.command('unplug');
      await sleep(systemClock, 1200);
      expect(link.state.state).toBe('searching');
    } finally {
      await link.disconnect();
      await other.stop();
    }
  });

  it('is no longer looked for once the user lets go', async ({ bench }) => {
    const first = await bench.started();
    let searches = 0;
    const find = async (): Promise<[]> => {
      searches++;
      return [];
    };
    const link = new HeadLink(systemClock, { searchEveryMs: 20, find });
    await link.connect(first);
    const searching = nextState(link, 'searching');
    await bench.terminal.command('unplug');
    await searching;
    await link.disconnect();
    await sleep(systemClock, 60);
    const then = searches;
    await sleep(systemClock, 120);
    expect(searches).toBe(then);
    expect(link.state.state).toBe('idle');
  });

  it('two heads at once do not mix', async ({ bench }) => {
    const a = await bench.plugged(['--serial', 'SN0001']);
    const other = await simulatedHead('--serial', 'SN0002', '--kind', 'XYZ');
    const b = await connectHead(new SerialTransport(other.path), systemClock);
    try {
      const readings = await Promise.all([a.read(), b.read(), a.read(), b.readDark(), a.read()]);
      expect(readings.map((reading) => reading.counts.length)).toEqual([10, 3, 10, 3, 10]);
      expect(readings.map((reading) => reading.frame)).toEqual([1, 1, 2, 2, 3]);
    } finally {
      await b.close();
      await other.stop();
    }
  });
});
