/** The painter's own tile, over real HTTP: its sheet typed or from a file, or read against a known tile, and used. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PRACTICE_OWN_TILE, PRACTICE_WHITE_TILE } from '../../src/device/practice/surfaces.ts';
import { GRID_NM } from '../../src/colour/grid.ts';
import { TestBench } from './bench-client.ts';

const bench = new TestBench();
beforeAll(async () => {
  await bench.open();
}, 60_000);
afterAll(() => bench.close());

const sheet = { wavelengths: [...GRID_NM], values: [...PRACTICE_WHITE_TILE] };
/** Placing (0.15 %) and count noise of the practice head, three placings on a scale set by four. */
const PLACED = 0.006;

describe('a tile’s sheet', () => {
  it('is entered without a head, and is not in use yet', async () => {
    const [tile] = await bench.get('addTile', {
      body: { from: 'number', name: 'Glazed tile', reflectance: 0.88 },
    });
    expect(tile).toMatchObject({ name: 'Glazed tile', origin: 'typed', values: [0.88], inUse: false });
    expect((await bench.refusal('useTile', { params: { tileId: tile!.id } })).type).toBe(
      '/problems/no-instrument',
    );
  });

  it('is refused where no tile reads so, or it is a colour', async () => {
    const { detail } = await bench.refusal('addTile', {
      body: { from: 'sheet', name: 'x', scale: '0-1', wavelengths: [400, 700], values: [0.05, 0.9] },
    });
    expect(detail).toMatch(/0\.050 somewhere, and a white tile lies between 0\.2 and 1\.1/);
    const file = {
      from: 'file' as const,
      name: 'x',
      fileName: 'tile.csv',
      text: 'name,L,a,b\ntile,95,0,1\n',
    };
    expect((await bench.refusal('addTile', { body: file })).status).toBeGreaterThanOrEqual(400);
  });

  it(
    'is seen through the windows of the head, and the next white is set on it',
    { timeout: 60_000 },
    async () => {
      await bench.get('connectInstrument', { body: { transport: 'practice', kind: 'bands', seed: 3 } });
      const twice = sheet.values.map((v) => v / 2);
      const [tile] = await bench.get('addTile', {
        body: { from: 'sheet', name: 'Half', scale: '0-1', ...sheet, values: twice },
      });
      expect(tile).toMatchObject({ name: 'Half', inUse: true, usable: true });
      await bench.get('readWhiteTile', { body: {} });
      const { reflectance } = await bench.get('readOnce');
      // The tile lies there still: it reads what its sheet says, a half of what the practice tile truly has.
      for (const R of reflectance!) expect(R).toBeCloseTo(0.445, 1);
      expect((await bench.get('useNoTile')).every((t) => !t.inUse)).toBe(true);
      await bench.get('readWhiteTile', { body: {} });
      for (const R of (await bench.get('readOnce')).reflectance!) expect(R).toBeGreaterThan(0.8);
    },
  );

  it('comes from a file too, in per cent', async () => {
    const rows = sheet.wavelengths.map((nm, i) => `${nm},${(100 * sheet.values[i]!).toFixed(3)}`);
    const text = `name,${sheet.wavelengths.join(',')}\nTile,${rows.map((r) => r.split(',')[1]).join(',')}\n`;
    const [tile] = await bench.get('addTile', {
      body: {
        from: 'file',
        name: 'From its file',
        fileName: 'tile.csv',
        text,
        geometry: '45/0',
        scale: 'per cent',
      },
    });
    expect(tile).toMatchObject({ origin: 'file', wavelengths: [...GRID_NM] });
    expect(tile!.values[10]).toBeCloseTo(sheet.values[10]!, 4);
    await bench.get('deleteTile', { params: { tileId: tile!.id } });
    expect((await bench.get('listTiles')).map((t) => t.name)).not.toContain('From its file');
  });
});

describe('a tile read against a known one', () => {
  it('needs the known one first, and three placings', { timeout: 60_000 }, async () => {
    await bench.get('connectInstrument', { body: { transport: 'practice', kind: 'spectral', seed: 3 } });
    expect((await bench.refusal('readOwnTile')).detail).toMatch(/white tile is not read yet/);
    await bench.get('readWhiteTile', { body: {} });
    await bench.get('readBlackTrap');
    expect(await bench.get('readOwnTile')).toMatchObject({ placings: 1 });
    await bench.get('readOwnTile');
    const few = await bench.refusal('addTile', { body: { from: 'placings', name: 'Mine' } });
    expect(few.detail).toMatch(/three placings or more; there are 2/);
    expect((await bench.get('readOwnTile')).sentence).toMatch(/name the tile and keep it/);
  });

  it('has the values it truly has, with their doubt, for that head alone', { timeout: 60_000 }, async () => {
    const [tile] = await bench.get('addTile', { body: { from: 'placings', name: 'Mine' } });
    expect(tile).toMatchObject({ name: 'Mine', origin: 'read', inUse: true, usable: true });
    const mean = (v: ArrayLike<number>): number => Array.from(v).reduce((a, b) => a + b, 0) / v.length;
    expect(Math.abs(mean(tile!.values) / mean(PRACTICE_OWN_TILE) - 1)).toBeLessThan(PLACED);
    expect(Math.max(...tile!.sigma!)).toBeLessThan(0.02);
    await bench.get('connectInstrument', { body: { transport: 'practice', kind: 'bands' } });
    const mine = (await bench.get('listTiles')).find((t) => t.name === 'Mine')!;
    expect(mine).toMatchObject({ usable: false, inUse: false });
    expect((await bench.refusal('useTile', { params: { tileId: mine.id } })).status).toBe(409);
  });
});
