/** Long use leaves nothing behind: no memory, no timers, no open files. */
import { readdirSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { sleep } from '../../src/device/clock.ts';
import { LineLink } from '../../src/device/framing/line-link.ts';
import { connectHead } from '../../src/device/head/connect.ts';
import { HeadLink } from '../../src/device/head/head-link.ts';
import { PracticeHead } from '../../src/device/practice/practice-head.ts';
import { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import { SeededNoise } from '../../src/device/practice/seeded-noise.ts';
import { SerialTransport } from '../../src/device/serial/serial-transport.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import { DAMAGES, FaultyWire } from './faulty-wire.ts';
import { simulatedHead } from './simulated-head/simulated-head.ts';
import { SimulatedClock } from './simulated-clock.ts';

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

/** Heap in use once all garbage is gone, MB. */
async function heapMb(): Promise<number> {
  for (let i = 0; i < 3; i++) {
    collect();
    await new Promise((resolve) => setImmediate(resolve));
  }
  return process.memoryUsage().heapUsed / 2 ** 20;
}

/** Every reading kept for good would be more than 2 MB in this time; compiled code and the collector waver by less than 1. */
const HEAP_GROWTH_MB = 1;

describe('two hours at the bench, by a simulated clock', () => {
  it('reading, faults on the wire and a cable pulled every five minutes: no memory, no timer stays', async () => {
    const clock = new SimulatedClock();
    const dice = new SeededNoise(7);
    const instrument = new PracticeInstrument(clock, { seed: 7 });
    let wire: FaultyWire | undefined;
    const plug = (): LineLink => {
      wire = new FaultyWire(instrument, clock, dice);
      return new LineLink(wire);
    };
    const link = new HeadLink(clock, { settings: { apertureS: 0.1 }, find: async () => [plug()] });
    await clock.run(link.connect(plug()));
    let readings = 0;
    const minute = async (): Promise<void> => {
      const end = clock.now() + 60_000;
      while (clock.now() < end) {
        const { head } = link;
        if (!head) {
          await clock.pass(500);
          continue;
        }
        if (dice.below(10) === 0) wire?.damageNext(DAMAGES[dice.below(DAMAGES.length)]!);
        const reading = dice.below(4) === 0 ? head.readDark() : head.read();
        const taken = await clock.run(reading.catch(() => undefined));
        if (taken) readings++;
        if (dice.below(8) === 0) await clock.pass(5000); // long enough for heartbeats
      }
    };
    for (let i = 0; i < 10; i++) await minute();
    const before = { heap: await heapMb(), timers: clock.pendingTimers };
    for (let i = 0; i < 100; i++) {
      if (i % 5 === 0) wire?.unplug();
      await minute();
    }
    await clock.pass(10_000);
    expect(link.head).toBeDefined();
    expect(clock.now()).toBeGreaterThanOrEqual(110 * 60_000);
    expect(readings).toBeGreaterThan(6000);
    // The heartbeat's timer, and nothing else.
    expect(clock.pendingTimers).toBeLessThanOrEqual(Math.max(before.timers, 1));
    const growth = (await heapMb()) - before.heap;
    console.log(
      `${readings} readings in 110 simulated minutes; heap grew ${growth.toFixed(2)} MB in the last 100.`,
    );
    expect(growth).toBeLessThan(HEAP_GROWTH_MB);
    await link.disconnect();
    expect(clock.pendingTimers).toBe(0);
  });

  it('the same bound catches a leak', async () => {
    const clock = new SimulatedClock();
    const head = await clock.run(connectHead(new PracticeHead(new PracticeInstrument(clock)), clock));
    const before = await heapMb();
    const kept: unknown[] = [];
    for (let i = 0; i < 6000; i++) kept.push(await clock.run(head.read()));
    expect((await heapMb()) - before).toBeGreaterThan(HEAP_GROWTH_MB);
    expect(kept).toHaveLength(6000);
    await head.close();
  });
});

describe.runIf(process.platform === 'linux')('thirty connections over a pseudo-terminal', () => {
  const openFiles = (): number => readdirSync('/proc/self/fd').length;

  it('leave no file open and no handle behind', async () => {
    const terminal = await simulatedHead();
    const once = async (): Promise<void> => {
      const head = await connectHead(new SerialTransport(terminal.path), systemClock);
      await head.read();
      await head.close();
    };
    for (let i = 0; i < 3; i++) await once();
    await sleep(systemClock, 200);
    const before = { files: openFiles(), handles: process.getActiveResourcesInfo().length };
    for (let i = 0; i < 30; i++) await once();
    await sleep(systemClock, 200);
    expect(openFiles()).toBeLessThanOrEqual(before.files);
    expect(process.getActiveResourcesInfo().length).toBeLessThanOrEqual(before.handles + 1);
    await terminal.stop();
  });
});
