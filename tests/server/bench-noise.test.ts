import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readSwatchSet } from '../../src/calibrate/swatch-set/read.ts';
import { fitProblem } from '../../src/fit/model/problem.ts';
import { SETTINGS } from '../../src/fit/model/settings.ts';
import { TestBench } from './bench-client.ts';

const bench = new TestBench();
beforeAll(async () => {
  await bench.open();
  await bench.readyWithDemo();
}, 60_000);
afterAll(() => bench.close());

describe('the noise of the head', () => {
  it(
    'is not guessed from too few repeats, and is handed to the fit once there are enough',
    { timeout: 120_000 },
    async () => {
      const paletteId = (await bench.get('state')).currentPaletteId!;
      const exported = async () =>
        (await bench.get('exportSwatchSet', { params: { paletteId } })) as {
          noise?: { sigma: number; relative: number };
        };
      await bench.climb('demo-white', { repeats: 3 });
      expect((await exported()).noise).toBeUndefined();
      await bench.climb('demo-deep-blue', { repeats: 3, whiteParts: [0, 1] });
      const { noise } = await exported();
      // The practice head puts a grey factor of 0.15 % on each placing (PRACTICE_TRAITS.placement), besides its counts.
      expect(noise!.relative).toBeGreaterThan(0.0002);
      expect(noise!.relative).toBeLessThan(0.006);
      expect(noise!.sigma).toBeLessThan(0.003);

      // And from there into the weight of every reading: the variance the fit divides by.
      const set = readSwatchSet(await exported());
      const { groups } = fitProblem(set, { settings: SETTINGS.spectral, estimate: [] });
      for (const { mean, variance, repeats } of groups.flatMap((g) => g.swatches)) {
        for (const c of [0, 17, 35]) {
          const one = noise!.sigma ** 2 + (noise!.relative * mean[c]!) ** 2;
          expect(variance[c]! * repeats).toBeGreaterThanOrEqual(one);
          // Beyond it there is only the least noise any reading is taken to have.
          expect(variance[c]! * repeats - one).toBeLessThan(1e-6);
        }
      }

      const record = await bench.get('getHeadRecord');
      expect(record.noise!.sigma).toBeCloseTo(noise!.sigma, 5);
      expect(record.noise!.relative).toBeCloseTo(noise!.relative, 5);
      expect(record.noise!.sentence).toMatch(/scatters by .* as its repeats show/);
    },
  );
});

describe('the bands of a head that tells its curves', () => {
  it('are described by what they see, row by row', async () => {
    const { form } = await bench.get('connectInstrument', { body: { transport: 'practice', kind: 'bands' } });
    if (form?.kind !== 'bands') throw new Error('a head with bands was asked for');
    for (const row of form.response?.rows ?? []) expect(row.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
    for (const band of form.bands) expect(band.centre).toBeGreaterThan(380);
  });
});
