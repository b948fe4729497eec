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
