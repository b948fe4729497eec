/** The head's own button, over real HTTP: what a press reads, when it reads nothing, and that it is told each time. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ServerEvent } from '../../server/api/events.ts';
import { TestBench } from './bench-client.ts';

const bench = new TestBench();
type TakenEvent = Extract<ServerEvent, { type: 'taken' }>;
let ladderId: string;
let rungId: string;
let otherRungId: string;

beforeAll(async () => {
  await bench.open();
  await bench.readyWithDemo();
  const tube = (await bench.get('listTubes')).find((t) => t.role !== 'white')!;
  let ladder = await bench.get('startLadder', { body: { tubeId: tube.id } });
  ladderId = ladder.id;
  while (ladder.next.action === 'weigh') {
    const rung = ladder.rungs.find((r) => r.id === ladder.next.rungId)!;
    const grams = rung.parts.map((part) => part.plannedGrams);
    ladder = await bench.get('weighRung', { params: { ladderId, rungId: rung.id }, body: { grams } });
  }
  rungId = ladder.next.rungId!;
  otherRungId = ladder.rungs.find((r) => r.id !== rungId)!.id;
});
afterAll(() => bench.close());

/** Does something and waits for what is told of the next press. */
function told(deed: () => Promise<unknown>): Promise<TakenEvent> {
  return new Promise((resolve, reject) => {
    const stop = bench.started.bench.events.listen((event) => {
      if (event.type !== 'taken') return;
      stop();
      resolve(event);
    });
    deed().catch(reject);
  });
}
const press = (): Promise<TakenEvent> => told(() => bench.ask('pressPracticeButton'));
const aimAt = (id: string) =>
  bench.get('aimButton', { body: { ladderId, on: { rungId: id }, over: 'opaque' } });
const readings = async (): Promise<number> =>
  (await bench.get('getLadder', { params: { ladderId } })).rungs.flatMap((r) => r.readings).length;

describe("the head's own button", () => {
  it('puts nothing into a ladder while it is aimed at none', async () => {
    // A press is heard only while the head waits for one, and over once it was seen to read and to be done.
    await expect.poll(() => bench.started.bench.instrument.practice!.waitingForButton).toBe(true);
    const over = new Promise<void>((resolve) => {
      let reading = false;
      const stop = bench.started.bench.events.listen((event) => {
        if (event.type !== 'instrument') return;
        reading ||= event.instrument.state === 'reading';
        if (!reading || event.instrument.state !== 'ready') return;
        stop();
        resolve();
      });
    });
    await bench.get('pressPracticeButton');
    await over;
    expect(await readings()).toBe(0);
  });

  it('reads the rung it is aimed at, press after press, and tells of each', async () => {
    await aimAt(rungId);
    // Three are enough unless they scatter by chance, and then more are asked for.
    const ladder = () => bench.get('getLadder', { params: { ladderId } });
    const done = async () => (await ladder()).rungs.find((r) => r.id === rungId)!.done;
    let presses = 0;
    while (presses < 3 || (presses < 20 && !(await done()))) {
      presses += 1;
      const told = await press();
      expect(told).toMatchObject({ ladderId, rungId, reading: { over: 'opaque' } });
      expect(await readings()).toBe(presses);
    }
    expect(await done()).toBe(true);
    expect((await ladder()).undo).not.toBeNull();
  });

  it('reads the same rung as the key does, within the noise of repeats', async () => {
    const taken = await bench.get('takeReading', { params: { ladderId, rungId }, body: { source: 'head' } });
    const before = taken.ladder.rungs.find((r) => r.id === rungId)!.readings[0]!.values;
    const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
    // Placing scatters by 0.15 % and the counts by less (PRACTICE_TRAITS).
    expect(Math.abs(mean(taken.reading!.values) - mean(before))).toBeLessThan(0.005);
  });

  it('never counts a press for a rung it was aimed at afterwards', async () => {
    const { button, instrument } = bench.started.bench;
    const of = async (id: string): Promise<number> =>
      (await bench.get('getLadder', { params: { ladderId } })).rungs.find((r) => r.id === id)!.readings
        .length;
    for (const [from, to] of [
      [rungId, otherRungId],
      [otherRungId, rungId],
    ] as const) {
      await aimAt(from);
      const before = await of(to);
      // In one breath, past HTTP: the head is still taking the frame when the aim changes.
      const target = { ladderId, on: { rungId: to }, over: 'opaque' as const };
      const event = await told(() => Promise.all([instrument.practice!.press(), button.aim(target)]));
      expect(event).toMatchObject({ rungId: to, reading: null });
      expect(event.findings[0]!.sentence).toBe(
        'A press of the head’s button made before the change was set aside; press again.',
      );
      expect(await of(to)).toBe(before);
      expect(await press()).toMatchObject({ rungId: to, reading: { over: 'opaque' } });
      expect(await of(to)).toBe(before + 1);
    }
  });

  it('counts a press made before for what it was made for, where it was noticed in time', async () => {
    await aimAt(rungId);
    const noticed = new Promise<void>((resolve) => {
      const stop = bench.started.bench.events.listen((event) => {
        if (event.type !== 'instrument' || event.instrument.state !== 'reading') return;
        stop();
        resolve();
      });
    });
    const event = await told(async () => {
      await bench.get('pressPracticeButton');
      await noticed;
      await aimAt(otherRungId);
    });
    expect(event).toMatchObject({ rungId, reading: { over: 'opaque' } });
  });

  it('says why when a press gives no reading', async () => {
    await bench.get('closeLadder', { params: { ladderId } });
    const told = await press();
    expect(told.reading).toBeNull();
    expect(told.findings[0]!.sentence).toContain('put aside');
  });

  it('refuses an aim at what is not there, and a press without the practice head', async () => {
    const on = { rungId: 'nothing' };
    expect((await bench.refusal('aimButton', { body: { ladderId, on, over: 'opaque' } })).status).toBe(404);
    await bench.get('freeButton');
    await bench.get('disconnectInstrument');
    expect((await bench.refusal('pressPracticeButton')).status).toBe(409);
  });
});
