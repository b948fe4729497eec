import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STILL_TRAITS } from '../../src/device/practice/light.ts';
import { PracticeHead } from '../../src/device/practice/practice-head.ts';
import { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import { TestBench } from './bench-client.ts';

/** A head without noise, whose lamp can be dimmed. */
const instrument = new PracticeInstrument(systemClock, { variant: 'bands-8', seed: 5, traits: STILL_TRAITS });
const ports = {
  openPort: async (path: string) => new PracticeHead(instrument, path),
  searchPort: async () => async () => [],
};
const dim = (share: number): void => instrument.setTraits({ warmUp: share, warmUpSeconds: 1e9 });

const bench = new TestBench();
let params: { ladderId: string; rungId: string };
const connect = async () => {
  await bench.get('connectInstrument', { body: { transport: 'serial', path: '/dev/ttyACM0' } });
  await bench.get('setInstrument', { body: { gain: 64, apertureMs: 50 } });
};
const white = async () => {
  instrument.place({ kind: 'white-tile' });
  return bench.get('readWhiteTile', { body: {} });
};
const read = async () => {
  instrument.place({ kind: 'check-tile' });
  return bench.get('takeReading', { params, body: { source: 'head' } });
};
const readings = async () => (await bench.get('getLadder', { params })).rungs[0]!.readings;

beforeAll(async () => {
  await bench.open({ ports });
  await bench.get('createDemoRack');
  const ladder = await bench.get('startLadder', { body: { tubeId: 'demo-white', repeats: 2 } });
  params = { ladderId: ladder.id, rungId: ladder.rungs[0]!.id };
  await connect();
}, 60_000);
afterAll(() => bench.close());

describe('a block of readings between two whites', () => {
  it('is closed before anything is made of it, each reading against the white between', async () => {
    await white();
    const first = (await read()).reading!;
    await read();
    const { next } = await bench.get('getLadder', { params });
    expect(next).toMatchObject({ action: 'calibrate' });
    expect(next.sentence).toMatch(/closes the block of the last 2 readings/);
    const refused = await bench.refusal('startFit', { body: {} });
    expect(refused.detail).toMatch(
      /wait for the white .* left out \(2 of the masstone\); read the white tile/,
    );
    dim(0.004);
    const { steps } = await white();
    expect(steps.find((s) => s.step === 'white tile')!.sentence).toMatch(
      /moved by 0\.4[01] % since the white before, and 0\.50 % is allowed; 2 readings between the two are worked out/,
    );
    const closed = (await readings())[0]!;
    expect(closed.state).toBe('kept');
    // The lamp fell by 0.4 % after the reading, so the white between is lower and the reading higher, by less than that.
    const ratio = closed.values[3]! / first.values[3]!;
    expect(ratio).toBeGreaterThan(1.0001);
    expect(ratio).toBeLessThan(1.0041);
    expect((await bench.get('getLadder', { params })).next.action).toBe('fit');
  });

  it('is sent back with its reason where the white moved, once a second white says the same', async () => {
    dim(0);
    await white();
    const { reading } = await read();
    dim(0.01);
    const warned = await white();
    expect(warned.findings.map((f) => f.sentence).join()).toMatch(
      /white fell by 1\.0 % in .* Read the white tile once more first/,
    );
    const now = async () => (await readings()).find((r) => r.id === reading!.id)!;
    expect(await now()).toMatchObject({ state: 'kept' });
    await white();
    expect(await now()).toMatchObject({ state: 'sent back', decidedBy: 'program' });
    expect((await now()).reason).toMatch(/white fell by 1\.0 %.*read the block again/);
    expect((await now()).values).toEqual(reading!.values);
    const decided = {
      params: { ...params, readingId: reading!.id },
      body: { keep: true, reason: 'dry day' },
    };
    await bench.get('decideReading', decided);
    expect(await now()).toMatchObject({ state: 'kept', decidedBy: 'painter' });
  });

  it('is closed by the first white after a restart as well', async () => {
    dim(0);
    await white();
    const { reading } = await read();
    await bench.reopen({ ports });
    await connect();
    dim(0.004);
    await white();
    const after = (await readings()).find((r) => r.id === reading!.id)!;
    expect(after.values[3]! / reading!.values[3]!).toBeGreaterThan(1.0001);
  });

  it('is sent back where the head was set differently in between', async () => {
    dim(0);
    await white();
    const { reading } = await read();
    await bench.get('setInstrument', { body: { gain: 32, apertureMs: 150 } });
    const { findings } = await white();
    expect(findings.map((f) => f.sentence).join()).toMatch(/set differently .* 1 reading of that block is/);
    expect((await readings()).find((r) => r.id === reading!.id)!.state).toBe('sent back');
  });
});
