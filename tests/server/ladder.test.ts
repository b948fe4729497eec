import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TestBench } from './bench-client.ts';

const bench = new TestBench();
beforeAll(async () => {
  await bench.open();
  await bench.readyWithDemo();
}, 60_000);
afterAll(() => bench.close());

const typed = (shift: number) => ({
  source: 'typed' as const,
  reading: {
    kind: 'reflectance' as const,
    geometry: '45/0' as const,
    scale: '0-1' as const,
    wavelengths: [400, 500, 600, 700],
    values: [0.1, 0.2, 0.3, 0.4].map((v) => v + shift),
  },
});

describe('a ladder', () => {
  it('is planned before anything is started, and planning keeps nothing', async () => {
    const { plan, rungs } = await bench.get('planLadder', { body: { tubeId: 'demo-deep-blue' } });
    expect(rungs.map((r) => r.name)).toEqual(['masstone', '1:1', '1:4', '1:16']);
    expect(plan.tubeGrams).toBeGreaterThan(0);
    expect(await bench.get('listLadders')).toEqual([]);
  });

  it('is refused without a white, for a tube that is not there, and twice for one tube', async () => {
    expect((await bench.refusal('startLadder', { body: { tubeId: 'nobody' } })).status).toBe(404);
    await bench.get('startLadder', { body: { tubeId: 'demo-warm-yellow' } });
    const twice = await bench.refusal('startLadder', { body: { tubeId: 'demo-warm-yellow' } });
    expect(twice).toMatchObject({ status: 409, type: '/problems/ladder-open' });
  });

  it('of the white is its masstone alone: it has no tint with itself', async () => {
    const ladder = await bench.climb('demo-white', { repeats: 2 });
    expect(ladder.rungs.map((r) => r.name)).toEqual(['masstone']);
    expect(ladder).toMatchObject({ state: 'complete', next: { action: 'fit' } });
  });

  it('takes weighings, readings by the head, and typed readings as equals', async () => {
    const ladder = await bench.get('startLadder', { body: { tubeId: 'demo-red-earth', method: 'straight' } });
    const ladderId = ladder.id;
    const [masstone, half] = ladder.rungs;
    expect(masstone!.weighed).toBe(true);
    expect(half!.weighed).toBe(false);
    const short = await bench.refusal('weighRung', {
      params: { ladderId, rungId: half!.id },
      body: { grams: [1] },
    });
    expect(short.detail).toContain('2 pours and 1 masses');
    // For a page in another language: which sentence it is, and what it says.
    expect(short).toMatchObject({
      code: 'ladders.pours',
      values: { rung: half!.name, pours: '2', masses: '1' },
    });
    const weighed = await bench.get('weighRung', {
      params: { ladderId, rungId: half!.id },
      body: { grams: [1.02, 0.98] },
    });
    expect(weighed.rungs[1]!.share).toBeCloseTo(0.51, 12);
    const params = { ladderId, rungId: masstone!.id };
    const byHead = await bench.get('takeReading', { params, body: { source: 'head' } });
    expect(byHead.reading).toMatchObject({ source: 'practice', kind: 'spectral', state: 'kept' });
    const byHand = await bench.get('takeReading', { params, body: typed(0) });
    expect(byHand.reading).toMatchObject({ source: 'typed', values: [0.1, 0.2, 0.3, 0.4] });
    expect(byHand.ladder.rungs[0]!.readings).toHaveLength(2);
  });

  it('warns when masses look swapped, and believes the painter all the same', async () => {
    const [ladder] = await bench.get('listLadders', { query: { tube: 'demo-red-earth' } });
    const rung = ladder!.rungs.find((r) => r.name === '1:4')!;
    const grams = rung.parts.map((part) => part.plannedGrams).toReversed();
    const after = await bench.get('weighRung', {
      params: { ladderId: ladder!.id, rungId: rung.id },
      body: { grams },
    });
    const swapped = after.rungs.find((r) => r.name === '1:4')!;
    expect(swapped.findings).toMatchObject([{ code: 'swapped' }]);
    expect(swapped.weighed).toBe(true);
  });

  it('sends a far reading back with its reason, and keeps it when the painter says so', async () => {
    const ladder = await bench.get('startLadder', { body: { tubeId: 'demo-yellow-earth', repeats: 3 } });
    const ladderId = ladder.id;
    const params = { ladderId, rungId: ladder.rungs[0]!.id };
    for (const shift of [0, 0.0004, -0.0003]) await bench.get('takeReading', { params, body: typed(shift) });
    const far = await bench.get('takeReading', { params, body: typed(0.06) });
    expect(far.reading).toMatchObject({ state: 'sent back', decidedBy: 'program' });
    expect(far.reading!.reason).toMatch(/lighter than the others/);
    const readingId = far.reading!.id;
    const kept = await bench.get('decideReading', {
      params: { ladderId, readingId },
      body: { keep: true, reason: 'I looked.' },
    });
    expect(kept.rungs[0]!.readings[3]).toMatchObject({
      state: 'kept',
      decidedBy: 'painter',
      reason: 'I looked.',
    });
  });

  it('undoes and redoes in order, and nothing read is lost', async () => {
    const [ladder] = await bench.get('listLadders', { query: { tube: 'demo-yellow-earth' } });
    const params = { ladderId: ladder!.id };
    const states = (l: typeof ladder): string[] => l!.rungs[0]!.readings.map((r) => r.state);
    expect(ladder!.undo).toBe('keeping reading 4 of the masstone');
    const once = await bench.get('undo', { params });
    expect(states(once)).toEqual(['kept', 'kept', 'kept', 'sent back']);
    const twice = await bench.get('undo', { params });
    expect(states(twice)).toEqual(['kept', 'kept', 'kept', 'taken back']);
    expect(twice.redo).toBe('reading 4 of the masstone');
    await bench.get('redo', { params });
    const again = await bench.get('redo', { params });
    expect(states(again)).toEqual(['kept', 'kept', 'kept', 'kept']);
    expect((await bench.refusal('redo', { params })).detail).toBe(
      'There is nothing to do again on this ladder.',
    );
    for (let n = 0; n < 5; n += 1) await bench.get('undo', { params });
    const empty = await bench.get('getLadder', { params });
    expect(states(empty)).toEqual(['taken back', 'taken back', 'taken back', 'taken back']);
    expect((await bench.refusal('undo', { params })).status).toBe(409);
  });

  it('asks for a question’s answer in place of guessing a scale', async () => {
    const [ladder] = await bench.get('listLadders', { query: { tube: 'demo-yellow-earth' } });
    const params = { ladderId: ladder!.id, rungId: ladder!.rungs[0]!.id };
    const { reading } = typed(0);
    const { scale: _scale, ...open } = reading;
    const doubtful = { ...open, values: [0.9, 1.1, 1.2, 1.0] };
    const reply = await bench.ask('takeReading', { params, body: { source: 'typed', reading: doubtful } });
    expect(reply.status).toBe(422);
    expect(reply.body).toMatchObject({ type: '/problems/question', choices: ['0-1', 'percent'] });
  });

  it('reads a sample out of a CSV file, and names what it holds when there are several', async () => {
    const [ladder] = await bench.get('listLadders', { query: { tube: 'demo-yellow-earth' } });
    const params = { ladderId: ladder!.id, rungId: ladder!.rungs[0]!.id };
    const text =
      'SAMPLE_ID,SPECTRAL_NM_400,SPECTRAL_NM_500,SPECTRAL_NM_600,SPECTRAL_NM_700\nfirst,0.1,0.2,0.3,0.4\nsecond,0.2,0.2,0.3,0.4\n';
    const file = {
      source: 'file' as const,
      fileName: 'readings.csv',
      text,
      geometry: '45/0' as const,
      scale: 'fraction' as const,
    };
    const several = await bench.ask('takeReading', { params, body: file });
    expect(several.body).toMatchObject({ type: '/problems/question', choices: ['first', 'second'] });
    const taken = await bench.get('takeReading', { params, body: { ...file, sample: 'second' } });
    expect(taken.reading).toMatchObject({ source: 'file', values: [0.2, 0.2, 0.3, 0.4] });
  });

  it('reads no real paint with the practice instrument', async () => {
    const real = await bench.get('createTube', { body: { label: 'My blue', pigments: ['PB29'] } });
    const ladder = await bench.get('startLadder', { body: { tubeId: real.id } });
    const params = { ladderId: ladder.id, rungId: ladder.rungs[0]!.id };
    const refused = await bench.refusal('takeReading', { params, body: { source: 'head' } });
    expect(refused.type).toBe('/problems/practice-only');
    expect((await bench.get('getLadder', { params: { ladderId: ladder.id } })).rungs[0]!.readings).toEqual(
      [],
    );
  });

  it('goes on where it was after the program was stopped', async () => {
    const before = await bench.get('listLadders');
    await bench.reopen();
    const after = await bench.get('listLadders');
    const kept = (ladders: typeof before) =>
      ladders.map((l) => [l.id, l.undo, l.rungs.map((r) => [r.weighed, r.readings])]);
    expect(kept(after)).toEqual(kept(before));
    const state = await bench.get('state');
    expect(state.openLadderIds).toEqual(before.map((l) => l.id));
  });
});
