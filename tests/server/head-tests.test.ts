/** What the bench finds out about a head, over real HTTP: tests, gain steps that are then used, noise, check tile. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TestBench } from './bench-client.ts';

const bench = new TestBench();
beforeAll(async () => {
  await bench.open();
}, 60_000);
afterAll(() => bench.close());

/** Read noise of the practice head on the white tile, twice over: a white and a reading (PRACTICE_TRAITS). */
const NOISE = 0.006;

it('tests nothing without a head, and says so', async () => {
  for (const name of [
    'testAperture',
    'testGain',
    'testLightLeak',
    'getHeadRecord',
    'getTileHistory',
  ] as const) {
    expect((await bench.refusal(name)).type).toBe('/problems/no-instrument');
  }
});

describe('a head on the bench', () => {
  beforeAll(async () => {
    await bench.get('connectInstrument', { body: { transport: 'practice', kind: 'bands', seed: 4 } });
    await bench.get('setInstrument', { body: { gain: 64, apertureMs: 40 } });
  }, 60_000);

  it('has no record yet: no tests, too few sessions of the check tile, no noise', async () => {
    const record = await bench.get('getHeadRecord');
    expect(record).toMatchObject({ tests: [], gainSteps: [], noise: null });
    expect(record.checkTile).toMatchObject({ sessions: [], steady: null, charts: [] });
    expect(record.checkTile.sentence).toMatch(/need 5 sessions; there are /);
  });

  it('is linear in time, and its settings are as they were', { timeout: 60_000 }, async () => {
    const aperture = await bench.get('testAperture');
    expect(aperture.sentence).toMatch(/ms/);
    expect((await bench.get('getInstrument')).settings).toMatchObject({ gain: 64 });
  });

  it(
    'is linear by superposition of a second light, which must be strong enough',
    { timeout: 60_000 },
    async () => {
      const on = { body: { secondLight: 'on' as const } };
      expect((await bench.refusal('testSuperposition', on)).detail).toMatch(/not read alone yet/);
      const first = await bench.get('testSuperposition', { body: { secondLight: 'off' } });
      expect(first.verdict).toBeNull();
      expect(first.next).toMatch(/second light/);
      const { verdict } = await bench.get('testSuperposition', on);
      expect(verdict!.sentence).toMatch(/two lamps apart read/i);
      expect(Math.abs(verdict!.worst)).toBeLessThan(NOISE);
      expect((await bench.refusal('testSuperposition', on)).status).toBe(409);
    },
  );

  it(
    'is tested on shims: two heights give a verdict, and height 0 begins anew',
    { timeout: 60_000 },
    async () => {
      expect((await bench.refusal('testLift', { body: { shimMm: 0.1 } })).detail).toMatch(/height 0 first/);
      expect((await bench.get('testLift', { body: { shimMm: 0 } })).verdict).toBeNull();
      const { verdict } = await bench.get('testLift', { body: { shimMm: 0.5 } });
      // The practice head loses 0.3 % of its light for each 0.1 mm.
      expect(verdict!.worst).toBeLessThan(0);
      expect(Math.abs(verdict!.worst)).toBeGreaterThan(0.001);
      expect(verdict!.passed).toBe(true);
    },
  );

  it('tells room light from the black trap, once that is read', async () => {
    expect((await bench.refusal('testLightLeak')).detail).toMatch(/black trap at this gain first/);
    await bench.get('readWhiteTile', { body: {} });
    await bench.get('readBlackTrap');
    expect(await bench.get('testLightLeak')).toMatchObject({ passed: true });
    bench.started.bench.instrument.practice!.setTraits({ ambientLeak: 0.02 });
    const leaking = await bench.get('testLightLeak');
    bench.started.bench.instrument.practice!.setTraits({ ambientLeak: 0 });
    expect(leaking.passed).toBe(false);
    expect(leaking.sentence).toMatch(/^Not light-tight: .* 0\.20 % is allowed/);
  });

  it(
    'keeps white and trap over a step of gain only when the step was measured',
    { timeout: 60_000 },
    async () => {
      const at = (gain: number) => bench.get('setInstrument', { body: { gain, apertureMs: 40 } });
      expect((await at(32)).readyToRead).toBe(false);
      await at(64);
      await bench.get('readWhiteTile', { body: {} });
      await bench.get('readBlackTrap');
      const read = async () => {
        bench.started.bench.instrument.practice!.place({ kind: 'check-tile' });
        return (await bench.get('readOnce')).reflectance!;
      };
      const before = await read();
      const gain = await bench.get('testGain');
      expect(gain.sentence).toMatch(/gain 32 against 64/);
      const steps = (await bench.get('getHeadRecord')).gainSteps;
      expect(steps).toMatchObject([{ fromGain: 64, toGain: 32 }]);
      // The practice head's step of gain is 0.8 % off its nominal size (PRACTICE_TRAITS.gainStepError).
      for (const ratio of steps[0]!.ratios) expect(ratio).toBeCloseTo(0.992, 2);
      const kept = await at(32);
      expect(kept.readyToRead).toBe(true);
      expect(kept.findings.map((f) => f.code)).toContain('gain-kept');
      const after = await read();
      const level = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
      expect(Math.abs(level(after) / level(before) - 1)).toBeLessThan(0.006);
      expect((await bench.get('setInstrument', { body: { gain: 32, apertureMs: 50 } })).readyToRead).toBe(
        false,
      );
      expect((await at(64)).readyToRead).toBe(false);
    },
  );

  it(
    'charts the check tile over its sessions, with limits once there are enough',
    { timeout: 60_000 },
    async () => {
      await bench.get('readWhiteTile', { body: {} });
      for (let n = 0; n < 7; n += 1) await bench.get('readCheckTile');
      const { sessions, charts, sentence } = await bench.get('getTileHistory');
      expect(sessions).toHaveLength(7);
      expect(sentence).toMatch(/limits from 6 sessions only|outside its limits/);
      expect(charts.map((c) => c.name).slice(0, 3)).toEqual(['level', 'balance', 'F1']);
      const [level] = charts;
      expect(level!.values).toHaveLength(7);
      expect(level!.ranges).toHaveLength(6);
      // NIST/SEMATECH e-Handbook 6.3.2.2: 2.66 and 3.267 mean moving ranges, both widened while there are few: behind
      // six, 3.1 degrees of freedom, which JCGM 100 table G.2 (99.73 %) puts between 6.62 and 9.22 in place of 3.
      const { mean, upper, meanRange, upperRange } = level!.limits;
      const wider = (upper - mean) / (2.66 * meanRange);
      expect(wider).toBeGreaterThan((6.62 / 3) * Math.sqrt(7 / 6));
      expect(wider).toBeLessThan((9.22 / 3) * Math.sqrt(7 / 6));
      expect(upperRange).toBeCloseTo(wider * 3.267 * meanRange, 12);
    },
  );

  it('keeps the outcomes over a restart, under the head’s own name', async () => {
    await bench.reopen();
    await bench.get('connectInstrument', { body: { transport: 'practice', kind: 'bands', seed: 4 } });
    const record = await bench.get('getHeadRecord');
    expect(record.tests.map((t) => t.test)).toEqual([
      'aperture',
      'gain',
      'lift',
      'light leak',
      'superposition',
    ]);
    expect(record.checkTile.sessions).toHaveLength(7);
    expect(record.bands.map((b) => b.name)).toEqual(['F1', 'F2', 'F3', 'F4', 'F5', 'F6', 'F7', 'F8']);
    // Filter times lamp: where the lamp falls off, 680 nm moves by more than 5 nm from the catalogue's.
    const last = record.bands.at(-1)!;
    expect(last.catalogueNm).toBe(680);
    expect(last.centreNm).toBeGreaterThan(670);
    expect(last.centreNm).toBeLessThan(675);
    await bench.get('connectInstrument', { body: { transport: 'practice', kind: 'spectral' } });
    expect((await bench.get('getHeadRecord')).tests).toEqual([]);
  });
});
