import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ServerEvent } from '../../server/api/events.ts';
import { PracticeHead } from '../../src/device/practice/practice-head.ts';
import { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import { TestBench } from './bench-client.ts';

/** A head on a wire of its own; the name of its port changes when it is plugged in again. */
const instrument = new PracticeInstrument(systemClock, { variant: 'bands-8', seed: 5 });
let plugged: PracticeHead | undefined;
let nextName: string | undefined;
const ports = {
  openPort: async (path: string) => (plugged = new PracticeHead(instrument, path)),
  searchPort: async () => async () =>
    nextName === undefined ? [] : [(plugged = new PracticeHead(instrument, nextName))],
};

const bench = new TestBench();
const events: ServerEvent[] = [];
beforeAll(async () => {
  await bench.open({ ports });
  bench.started.bench.events.listen((event) => events.push(event));
  await bench.get('createDemoRack');
  await bench.get('connectInstrument', { body: { transport: 'serial', path: '/dev/ttyACM0' } });
  instrument.place({ kind: 'white-tile' });
  await bench.get('readWhiteTile', { body: {} });
}, 60_000);
afterAll(() => bench.close());

describe('a cable that is pulled during a ladder', () => {
  it('loses nothing, is found again under another name, and asks for the white before it reads', async () => {
    const ladder = await bench.get('startLadder', { body: { tubeId: 'demo-deep-blue' } });
    const params = { ladderId: ladder.id, rungId: ladder.rungs[0]!.id };
    instrument.place({ kind: 'check-tile' });
    const take = () => bench.ask('takeReading', { params, body: { source: 'head' } });
    expect(await take()).toMatchObject({ status: 201 });

    plugged!.unplug();
    expect(await bench.get('getInstrument')).toMatchObject({ state: 'lost', readyToRead: false });
    expect((await bench.refusal('takeReading', { params, body: { source: 'head' } })).detail).toMatch(
      /found by itself once it is plugged in; everything read so far is kept/,
    );
    nextName = '/dev/ttyACM1';
    await expect
      .poll(async () => (await bench.get('getInstrument')).state, { timeout: 10_000 })
      .toBe('ready');
    const back = await bench.get('getInstrument');
    expect(back).toMatchObject({ port: '/dev/ttyACM1', readyToRead: false });
    expect(back.next).toMatch(/lamp may be cold; read the white tile/);
    expect((await bench.refusal('takeReading', { params, body: { source: 'head' } })).type).toBe(
      '/problems/no-white',
    );

    instrument.place({ kind: 'white-tile' });
    await bench.get('readWhiteTile', { body: {} });
    instrument.place({ kind: 'check-tile' });
    expect(await take()).toMatchObject({ status: 201 });
    const { rungs } = await bench.get('getLadder', { params });
    expect(rungs[0]!.readings).toHaveLength(2);
  });

  it('tells the pages: lost, then ready', () => {
    const states = events.flatMap((event) => (event.type === 'instrument' ? event.instrument.state : []));
    const lost = states.indexOf('lost');
    expect(lost).toBeGreaterThan(0);
    expect(states.slice(lost)).toContain('ready');
  });

  it('arms the head again: its own button reads', async () => {
    const before = events.length;
    await expect.poll(() => instrument.waitingForButton).toBe(true);
    void instrument.press();
    await expect
      .poll(() => events.slice(before).some((e) => e.type === 'reading'), { timeout: 5000 })
      .toBe(true);
  });
});
