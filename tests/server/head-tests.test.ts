import { afterAll, beforeAll, expect, it } from 'vitest';
import { TestBench } from './bench-client.ts';

const bench = new TestBench();
beforeAll(async () => {
  await bench.open();
}, 60_000);
afterAll(() => bench.close());

it(
  'tests the head on its white tile, and leaves its settings as they were',
  { timeout: 90_000 },
  async () => {
    expect((await bench.refusal('testAperture')).type).toBe('/problems/no-instrument');
    await bench.get('connectInstrument', { body: { transport: 'practice', kind: 'bands', seed: 4 } });
    await bench.get('setInstrument', { body: { gain: 64, apertureMs: 100 } });
    const aperture = await bench.get('testAperture');
    expect(aperture.passed).toBe(true);
    expect(aperture.sentence).toMatch(/^Linear in time: at most .* within 0\.5/);
    const gain = await bench.get('testGain');
    expect(gain.sentence).toMatch(/gain 32 against 64/);
    expect((await bench.get('getInstrument')).settings).toMatchObject({ gain: 64 });
  },
);

it(
  'shows the check tile over its sessions, with limits once there are enough',
  { timeout: 60_000 },
  async () => {
    await bench.get('readWhiteTile', { body: {} });
    expect(await bench.get('tileHistory')).toMatchObject({ sessions: 0, steady: null, charts: [] });
    for (let n = 0; n < 6; n += 1) await bench.get('readCheckTile');
    const { sessions, charts } = await bench.get('tileHistory');
    expect(sessions).toBe(6);
    expect(charts.map((c) => c.name).slice(0, 2)).toEqual(['level', 'balance']);
    expect(charts[0]!.values).toHaveLength(6);
    expect(charts[0]!.limits.upper).toBeGreaterThan(charts[0]!.limits.lower);
  },
);
