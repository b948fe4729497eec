/** What a painter learns of a tube after the fit: mistakes at the scale, films, doubt, and how it dried. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Ladder } from '../../server/api/ladders.ts';
import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { GRID_NM } from '../../src/colour/grid.ts';
import { inventedSet } from '../fit/invented-set.ts';
import { TestBench } from './bench-client.ts';

/** Invented paints read through radiative transfer, typed in as spectra. */
const SET = inventedSet(57, { tubes: 1, weighing: 0.004, noise: 0.001 });
const GRAMS: Record<string, number[]> = { '1:1': [2, 2], '1:4': [1, 4], '1:16': [0.5, 8] };

const bench = new TestBench();
let ladder: Ladder;
const params = () => ({ ladderId: ladder.id });
const rung = (name: string) => ladder.rungs.find((r) => r.name === name)!;
const again = async () => (ladder = await bench.get('getLadder', { params: params() }));

const typed = (values: readonly number[]) => ({
  source: 'typed' as const,
  reading: {
    kind: 'reflectance' as const,
    geometry: '45/0' as const,
    scale: '0-1' as const,
    wavelengths: [...GRID_NM],
    values: [...values],
  },
});
async function readAll(climbed: Ladder, id: string): Promise<void> {
  for (const { name, id: rungId } of climbed.rungs) {
    for (const values of SET.swatches.find((s) => s.id === `${id}-${name}`)!.readings) {
      await bench.get('takeReading', { params: { ladderId: climbed.id, rungId }, body: typed(values) });
    }
  }
}
async function fit() {
  let running = await bench.get('startFit', { body: {} });
  while (running.state === 'pending' || running.state === 'running') {
    await new Promise((resolve) => setTimeout(resolve, 30));
    running = await bench.get('getFit', { params: { fitId: running.id } });
  }
  if (running.state !== 'complete') throw new Error(running.sentence);
  return bench.get('getFitResult', { params: { fitId: running.id } });
}
const blueOf = async () => (await fit()).tubes.find((t) => t.role === null)!;

beforeAll(async () => {
  await bench.open();
  const white = await bench.get('createTube', { body: { label: 'White', role: 'white' } });
  const tube = await bench.get('createTube', { body: { label: 'Blue' } });
  await readAll(await bench.get('startLadder', { body: { tubeId: white.id } }), 'white');
  ladder = await bench.get('startLadder', {
    body: { tubeId: tube.id, method: 'straight' },
  });
  for (const [name, grams] of Object.entries(GRAMS)) {
    const said = name === '1:4' ? grams.toReversed() : grams;
    await bench.get('weighRung', { params: { ...params(), rungId: rung(name).id }, body: { grams: said } });
  }
}, 60_000);
afterAll(() => bench.close());

describe('a ladder half read', () => {
  it('asks for nothing before a rung is read, then says what each next rung would buy', async () => {
    expect(await bench.get('getLadderAdvice', { params: params() })).toEqual([]);
    await readAll({ ...ladder, rungs: ladder.rungs.slice(0, 2) }, 'paint-1');
    const [first, ...more] = await bench.get('getLadderAdvice', { params: params() });
    expect(first!.next!.kind).toBe('tint');
    expect(first!.next!.after).toBeLessThan(first!.next!.before);
    for (const s of more) expect(s.gain!).toBeLessThanOrEqual(first!.gain!);
    expect(await bench.get('listFits')).toEqual([]);
    await readAll({ ...ladder, rungs: ladder.rungs.slice(2) }, 'paint-1');
    await again();
  }, 60_000);
});

describe('masses noted the wrong way round', () => {
  it('are named at once by the rung, and by what it reads like after the fit, which does without it', async () => {
    expect(rung('1:4').findings.map((f) => f.code)).toEqual(['swapped']);
    const blue = await blueOf();
    expect(blue.notBelieved).toHaveLength(1);
    expect(blue.notBelieved[0]).toMatchObject({ name: '1:4', rungId: rung('1:4').id, swapped: true });
    expect(blue.notBelieved[0]!.probability).toBeGreaterThan(0.9);
    expect(blue.notBelieved[0]!.readsLike! / 4).toBeCloseTo(1, 0);
    expect(blue.rungs.map((r) => r.name)).toEqual(['masstone', '1:1', '1:16']);
    await again();
    expect(rung('1:4').verdict).toMatch(/^reads like 1:\S+, not 4:1, and was left out$/);
  }, 60_000);

  it('are mended by weighing the rung again, which asks for another fit', async () => {
    const mended = { params: { ...params(), rungId: rung('1:4').id }, body: { grams: GRAMS['1:4']! } };
    ladder = await bench.get('weighRung', mended);
    expect(rung('1:4').findings).toEqual([]);
    expect(ladder.next.action).toBe('fit');
    const blue = await blueOf();
    expect(blue.notBelieved).toEqual([]);
    expect(blue.rungs).toHaveLength(4);
  }, 60_000);
});

describe('what to measure next', () => {
  it('is foretold in figures, best first, on the fit and on the ladder', async () => {
    await again();
    const worked = ladder.suggestions.filter((s) => s.gain !== null);
    expect(worked.length).toBeGreaterThan(0);
    expect(worked.map((s) => s.gain)).toEqual(worked.map((s) => s.gain).toSorted((a, b) => b! - a!));
    for (const { next, gain } of worked) {
      expect(gain).toBeGreaterThan(0);
      expect(next!.after).toBeLessThan(next!.before);
    }
  });
});

describe('the facts of a tube', () => {
  it('are hiding, undertone, half strength and the sources of its doubt, each with its bounds', async () => {
    const asked = { params: { tubeId: ladder.tubeId }, query: { x: '1.5' } };
    const { film, halfStrength, strengthPercent, doubt, drying } = await bench.get('getTubeFacts', asked);
    expect(film.contrast.X).toBeCloseTo(1.5, 9);
    for (const { low, value, high } of [film.contrast, film.fullHiding.X, halfStrength!]) {
      expect(low).toBeLessThan(value);
      expect(value).toBeLessThan(high);
    }
    expect(film.scattering).toBeNull();
    expect(strengthPercent).toBeNull();
    expect(doubt.sentence).toMatch(/% of the doubt comes from/);
    expect(await bench.get('getTubeChecks', { params: asked.params })).toMatchObject({
      count: 0,
      mean: null,
    });
    expect(drying).toEqual([]);
  });

  it('are refused in micrometres where no thickness was ever given', async () => {
    const refused = await bench.refusal('getTubeFacts', {
      params: { tubeId: ladder.tubeId },
      query: { micrometres: '50' },
    });
    expect(refused).toMatchObject({ status: 422 });
    expect(refused.detail).toMatch(/No drawdown of these readings has a known thickness/);
  });
});

describe('a film read again when dry', () => {
  it('has an age once it is said when it was drawn down, and no day in the future', async () => {
    const future = await bench.refusal('sayPulled', { params: params(), body: { pulledOn: '2999-01-01' } });
    expect(future.detail).toMatch(/cannot have been drawn down on 2999-01-01/);
    const today = new Date().toISOString().slice(0, 10);
    ladder = await bench.get('sayPulled', { params: params(), body: { pulledOn: today } });
    expect(rung('masstone').pulledOn).toBe(today);
    expect(rung('masstone').readings[0]!.ageDays).toBeLessThanOrEqual(1);
  });

  it('is never averaged with what was read wet, nor fitted; the two tell the shift', async () => {
    const wet = rung('masstone');
    const dry = SET.swatches
      .find((s) => s.id === 'paint-1-masstone')!
      .readings.map((r) => r.map((v) => v + 0.01));
    for (const values of dry) {
      await bench.get('takeReading', {
        params: { ...params(), rungId: wet.id },
        body: { ...typed(values), ageDays: 28 },
      });
    }
    await again();
    const now = rung('masstone');
    expect(now.readings.map((r) => [r.again, r.state])).toEqual([
      ...wet.readings.map(() => [false, 'kept']),
      ...dry.map(() => [true, 'kept']),
    ]);
    expect(now.mean).toEqual(wet.mean);
    expect(now.need).toEqual(wet.need);
    const { drying } = await bench.get('getTubeFacts', { params: { tubeId: ladder.tubeId } });
    expect(drying).toHaveLength(1);
    expect(drying[0]).toMatchObject({ name: 'masstone', rungId: now.id, dryDays: 28, beyondNoise: true });
    expect(drying[0]!.low).toBeGreaterThan(0);
    const { fit: row, tubes } = await fit();
    expect(row.leftOut.join()).toMatch(/Read again later.*Blue masstone/);
    expect(tubes.find((t) => t.role === null)!.rungs[0]!.repeats).toBe(wet.readings.length);
    const used = new Set(row.readingIds);
    expect(now.readings.filter((r) => used.has(r.id)).every((r) => !r.again)).toBe(true);
  }, 60_000);

  it('is in the file of readings as the same film, and comes back from it', async () => {
    const { paletteId } = (await bench.get('listTubes'))[0]!;
    const set = (await bench.get('exportSwatchSet', { params: { paletteId } })) as unknown as SwatchSet;
    const first = set.swatches.find((s) => s.id.endsWith('masstone') && s.ageDays !== undefined)!;
    expect(set.swatches.find((s) => s.again === first.id)).toMatchObject({ ageDays: 28 });
    await bench.get('importFile', { body: { fileName: 'set.json', text: JSON.stringify(set) } });
    await fit();
    const tube = (await bench.get('listTubes')).find((t) => t.role === null)!;
    const { drying } = await bench.get('getTubeFacts', { params: { tubeId: tube.id } });
    expect(drying).toHaveLength(1);
    expect(drying[0]).toMatchObject({ dryDays: 28, beyondNoise: true });
  }, 60_000);
});
