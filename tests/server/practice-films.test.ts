import { afterAll, beforeAll, expect, it } from 'vitest';
import { TestBench } from './bench-client.ts';

const bench = new TestBench();
beforeAll(async () => {
  await bench.open();
  await bench.readyWithDemo();
}, 60_000);
afterAll(() => bench.close());

it(
  'lays the practice head on thin films and bare cards, not on a film that hides',
  { timeout: 60_000 },
  async () => {
    const ladder = await bench.get('startLadder', {
      body: { tubeId: 'demo-deep-blue', cardFilms: true, whiteParts: [0, 1] },
    });
    const params = { ladderId: ladder.id, rungId: ladder.rungs[0]!.id };
    const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
    const over = async (side: 'black' | 'white' | 'opaque'): Promise<number> =>
      mean(
        (await bench.get('takeReading', { params, body: { source: 'head', over: side } })).reading!.values,
      );
    const card = async (side: 'black' | 'white'): Promise<number> =>
      mean(
        (
          await bench.get('takeCardReading', {
            params: { ladderId: ladder.id, side },
            body: { source: 'head' },
          })
        ).reading!.values,
      );
    const film = { black: await over('black'), white: await over('white') };
    const bare = { black: await card('black'), white: await card('white') };
    expect(bare.black).toBeLessThan(0.1);
    expect(bare.white).toBeGreaterThan(0.6);
    // A film that does not hide lets its card through.
    expect(film.white).toBeGreaterThan(film.black + 0.002);
    expect(film.white).toBeLessThan(bare.white);
    expect(await over('opaque')).toBeLessThan(bare.white);
  },
);
