import { describe, expect, it } from 'vitest';
import type { SwatchSet } from '../../src/calibrate/swatch-set/schema.ts';
import { fitPalette } from '../../src/fit/fit-palette.ts';
import { type InventedOptions, inventedSet } from './invented-set.ts';

const SEEDS = [201, 202, 203, 204, 205, 206];
const RUNG = 'paint-2-1:4';
const warningsOf = (set: SwatchSet): readonly string[] => fitPalette(set, { leaveOneOut: false }).warnings;
/** A smooth veil over one rung, a little uneven as grease is. */
const veiled = (seed: number, veil: number): SwatchSet =>
  inventedSet(seed, {
    tubes: 3,
    spoil: (id, r) => (id === RUNG ? r.map((v, i) => v + veil * (1 + 0.1 * Math.sin(i / 8))) : r),
  });

describe('a rung whose reading is not what the others foretell', () => {
  it('is not seen on clean ladders: none of 48 tubes, spectra and bands, smooth and sharp', () => {
    const kinds: InventedOptions[] = [
      {},
      { kind: 'bands' },
      { sharp: true },
      { kind: 'bands', crowding: 0.15 },
    ];
    const alarms = kinds.flatMap((options) =>
      [301, 302, 303, 304].flatMap((seed) => warningsOf(inventedSet(seed, { tubes: 3, ...options }))),
    );
    expect(alarms).toEqual([]);
  });

  it('is named where two swatches were exchanged, both left out', () => {
    for (const seed of SEEDS) {
      const set = inventedSet(seed, { tubes: 3 });
      const [a, b] = ['paint-2-1:1', RUNG].map((id) => set.swatches.find((s) => s.id === id)!);
      [a!.readings, b!.readings] = [b!.readings, a!.readings];
      const fit = fitPalette(set, { leaveOneOut: false });
      expect(fit.warnings.join(' ')).toMatch(/changed places/);
      expect(fit.swatches.map((s) => s.id)).not.toContain(RUNG);
    }
  });

  it('is named as veiled under a fingerprint of 3 %, and left out, in at least five of six palettes', () => {
    const named = SEEDS.filter((seed) =>
      warningsOf(veiled(seed, 0.03)).some((w) => w.includes(RUNG) && w.includes('fingerprint')),
    );
    expect(named.length).toBeGreaterThanOrEqual(5);
  });

  it('is named as wet where it reads evenly darker by 3 %, in at least five of six palettes', () => {
    const named = SEEDS.filter((seed) =>
      warningsOf(veiled(seed, -0.03)).some((w) => w.includes(RUNG) && w.includes('still wet')),
    );
    expect(named.length).toBeGreaterThanOrEqual(5);
  });
});
