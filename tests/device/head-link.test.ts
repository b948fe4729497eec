import { describe, expect, it } from 'vitest';
import type { DeviceFault } from '../../src/device/fault.ts';
import { LineLink } from '../../src/device/framing/line-link.ts';
import { connectHead } from '../../src/device/head/connect.ts';
import { HeadLink } from '../../src/device/head/head-link.ts';
import type { LinkState } from '../../src/device/head/head-link.ts';
import { PracticeHead } from '../../src/device/practice/practice-head.ts';
import { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import { SeededNoise } from '../../src/device/practice/seeded-noise.ts';
import { serialSearch } from '../../src/device/serial/serial-search.ts';
import type { ListedPort } from '../../src/device/serial/serial-library.ts';
import type { LineTransport } from '../../src/device/transport.ts';
import { FaultyWire } from './faulty-wire.ts';
import { SimulatedClock } from './simulated-clock.ts';

const instrumentOf = (clock: SimulatedClock, serial: string): PracticeInstrument =>
  new PracticeInstrument(clock, { serial, traits: { warmUp: 0 } });

describe('a head that falls silent', () => {
  it('is given up by the heartbeat, without anybody reading', async () => {
    const clock = new SimulatedClock();
    const transport = new PracticeHead(instrumentOf(clock, 'A'));
    const head = await clock.run(connectHead(transport, clock));
    transport.instrument.desk.execute = () => Promise.resolve(undefined);
    const down = new Promise<DeviceFault>((resolve) => head.on('down', resolve));
    expect((await clock.run(down)).kind).toBe('out-of-sync');
    expect(clock.now()).toBeLessThan(6000);
    expect(transport.isOpen).toBe(false);
  });
  it('after a lost heartbeat only, stays connected', async () => {
    const clock = new SimulatedClock();
    const wire = new FaultyWire(instrumentOf(clock, 'A'), clock, new SeededNoise(1));
    const head = await clock.run(connectHead(new LineLink(wire), clock));
    wire.damageNext('lost');
    await clock.pass(10_000);
    expect(head.isConnected).toBe(true);
    expect(head.health.retries).toBe(1);
    expect((await clock.run(head.read())).frame).toBe(1);
  });
});

describe('HeadLink', () => {
  function bench(find: (clock: SimulatedClock) => () => Promise<LineTransport[]>) {
    const clock = new SimulatedClock();
    const states: LinkState[] = [];
    const link = new HeadLink(clock, { find: find(clock), settings: { gain: 32 } });
    link.onState = (state) => states.push(state);
    return { clock, link, states };
  }

  it('tells connecting, ready, searching, ready; the head is another object with the same settings', async () => {
    const instruments: PracticeInstrument[] = [];
    const { clock, link, states } = bench(() => async () => [
      new PracticeHead(instruments[0]!, 'another port'),
    ]);
    instruments.push(instrumentOf(clock, 'A'));
    const transport = new PracticeHead(instruments[0]!, 'first port');
    const first = await clock.run(link.connect(transport));
    await clock.run(first.configure({ gain: 16, averages: 3 }));
    transport.unplug();
    instruments[0]!.powerOn();
    await clock.pass(5000);
    expect(states.map((state) => state.state)).toEqual(['connecting', 'ready', 'searching', 'ready']);
    expect(link.head).not.toBe(first);
    expect(link.head?.portName).toBe('another port');
    expect(link.head?.settings).toMatchObject({ gain: 16, averages: 3 });
    await link.disconnect();
    expect(clock.pendingTimers).toBe(0);
  });

  it('passes over another head and a list that fails, and goes on searching', async () => {
    let searches = 0;
    const { clock, link } = bench((time) => async () => {
      searches++;
      if (searches === 1) throw new Error('no list');
      return [new PracticeHead(instrumentOf(time, searches < 4 ? 'B' : 'A'))];
    });
    const transport = new PracticeHead(instrumentOf(clock, 'A'));
    await clock.run(link.connect(transport));
    transport.unplug();
    await clock.pass(20_000);
    expect(searches).toBe(4);
    expect(link.head?.identity.serial).toBe('A');
    await link.disconnect();
  });

  it('a head without a serial number is looked for only where it was', async () => {
    const { clock, link } = bench((time) => async () => [
      new PracticeHead(instrumentOf(time, '0'), 'another port'),
    ]);
    const transport = new PracticeHead(instrumentOf(clock, '0'), 'first port');
    await clock.run(link.connect(transport));
    transport.unplug();
    await clock.pass(10_000);
    expect(link.state.state).toBe('searching');
    await link.disconnect();
  });

  it('a first connection that fails leaves it idle', async () => {
    const { clock, link, states } = bench(() => async () => []);
    const silent = new PracticeHead(instrumentOf(clock, 'A'));
    silent.instrument.desk.execute = () => Promise.resolve(undefined);
    await expect(clock.run(link.connect(silent))).rejects.toMatchObject({ kind: 'no-answer' });
    expect(states.at(-1)).toEqual({ state: 'idle' });
  });
});

describe('the search among serial ports', () => {
  const candidates = async (now: ListedPort[], later: ListedPort[], path: string): Promise<string[]> => {
    let listed = now;
    const library = async () => ({ make: () => expect.fail('no port is opened'), list: async () => listed });
    const find = await serialSearch(path, { library, sysfs: () => [] });
    listed = later;
    return (await find({ serial: 'A', port: path })).map((transport) => transport.name);
  };
  const board = { vendorId: '2341', productId: '0043' };

  it('tries where it was and where the same kind of device is now, and no other device', async () => {
    const printer = { path: '/dev/ttyUSB0', vendorId: '1a86', productId: '7523' };
    const before = [{ path: '/dev/ttyACM0', ...board, serialNumber: '77' }, printer];
    const after = [{ path: '/dev/ttyACM3', ...board, serialNumber: '77' }, printer];
    expect(await candidates(before, after, '/dev/ttyACM0')).toEqual(['/dev/ttyACM0', '/dev/ttyACM3']);
  });
  it('leaves a like device with another USB serial number alone', async () => {
    const before = [{ path: '/dev/ttyACM0', ...board, serialNumber: '77' }];
    const after = [{ path: '/dev/ttyACM1', ...board, serialNumber: '78' }];
    expect(await candidates(before, after, '/dev/ttyACM0')).toEqual(['/dev/ttyACM0']);
  });
  it('a typed path that no list has is tried alone', async () => {
    const after = [{ path: '/dev/ttyACM1', ...board }];
    expect(await candidates([], after, '/dev/pts/9')).toEqual(['/dev/pts/9']);
  });
});
