import { describe, expect, it } from 'vitest';
import { closeBlock } from '../../src/calibrate/reading/block.ts';
import {
  type CountFrame,
  type Exposure,
  holdToSameSettings,
  signalOf,
} from '../../src/calibrate/reading/counts.ts';
import { holdLightTight } from '../../src/calibrate/reading/light-leak.ts';
import { holdWhite } from '../../src/calibrate/reading/reflectance.ts';
import { ReadingRefused } from '../../src/calibrate/refusal.ts';
import { DEMO_RACK, DEMO_WHITE } from '../../src/device/practice/paints/demo-rack.ts';
import { transferReflectance } from '../../src/device/practice/transfer/transfer-reflectance.ts';
import { effectiveBands } from '../../src/calibrate/bands/effective-bands.ts';
import { seededNormal, seededUniform } from './seeded-normal.ts';

/**
 * A made head with flare, dark level, uneven channels, noise and one fault at a time, on invented paints whose
 * reflectance is known. What is taken must be right; what is wrong must be refused.
 */
const CENTRES = [415, 445, 480, 515, 555, 590, 630, 680];
const channels = CENTRES.map((_, i) => `F${i + 1}`);
const head = { channels, fullScale: 65_500 };
const rows = effectiveBands(CENTRES.map((centreNm, i) => ({ name: channels[i]!, centreNm, fwhmNm: 40 })));
const read = (R: Float64Array) => rows.map(({ row }) => row.reduce((sum, w, i) => sum + w * R[i]!, 0));
const TILE = channels.map(() => 0.96);

const FAULTS = [
  'none',
  'steady room light',
  'room light on the swatch',
  'saturated',
  'gain changed',
  'lamp fades a little',
  'lamp fades a lot',
  'port smeared',
  'count lost',
  'lamp off',
  'dark lit',
  'white lifted',
] as const;

/** Right to 1 % of R and 0.002: ten times the noise of the made head. */
const RIGHT = (R: number): number => 0.01 * R + 0.002;

function session(seed: number, fault: (typeof FAULTS)[number]) {
  const normal = seededNormal(seed);
  const uniform = seededUniform(seed * 7919 + 1);
  const pick = DEMO_RACK[Math.floor(uniform() * DEMO_RACK.length)]!;
  const parts = [
    { paint: pick, mass: 1 },
    { paint: DEMO_WHITE, mass: [0, 1, 4, 16][Math.floor(uniform() * 4)]! },
  ];
  const truth = read(transferReflectance(parts, { geometry: '45/0' }));
  const lamp = channels.map(() => 20_000 + 25_000 * uniform());
  const fade = { 'lamp fades a little': 0.002, 'lamp fades a lot': 0.02 }[fault as string] ?? 0;
  const smeared = Math.floor(uniform() * channels.length);
  const shoot = (
    on: readonly number[],
    at: number,
    how: Partial<{ room: number; gain: number; level: number; lampOn: boolean }> = {},
  ) => {
    const { room = 0, gain = 64, level = 1, lampOn = true } = how;
    const frame = (lit: boolean): CountFrame => ({
      gain,
      apertureS: 0.182,
      lamp: lit,
      counts: lamp.map((L, c) => {
        const port = fault === 'port smeared' && at > 0.4 && c === smeared ? 0.97 : 1;
        const light = lit ? port * level * (1 - fade * at) * L * (on[c]! + 0.01) : 0;
        return Math.round((gain / 64) * (light + room * L) + 120 + 8 * normal());
      }),
    });
    return { light: frame(lampOn), dark: frame(false) } satisfies Exposure;
  };
  return { truth, shoot };
}

function take(seed: number, fault: (typeof FAULTS)[number]) {
  const { truth, shoot } = session(seed, fault);
  const everywhere = fault === 'steady room light' ? { room: 0.05 } : {};
  const first = shoot(TILE, 0, { ...everywhere, level: fault === 'white lifted' ? 0.7 : 1 });
  const trap = shoot(
    channels.map(() => 0),
    0.05,
    everywhere,
  );
  const swatch: Exposure = {
    ...shoot(truth, 0.5, {
      ...everywhere,
      ...(fault === 'room light on the swatch' ? { room: 0.02 } : {}),
      ...(fault === 'gain changed' ? { gain: 32 } : {}),
      ...(fault === 'lamp off' ? { lampOn: false } : {}),
    }),
  };
  const counts = [...swatch.light.counts];
  if (fault === 'saturated') counts[3] = 65_535;
  if (fault === 'count lost') counts[5] = Number.NaN;
  const light = { ...swatch.light, counts };
  const dark = fault === 'dark lit' ? { ...swatch.dark, lamp: true } : swatch.dark;
  const last = shoot(TILE, 1, everywhere);
  const white = holdWhite(first, head);
  holdToSameSettings(light, first.light, 'The white');
  const signal = signalOf({ light, dark }, head);
  holdLightTight(dark, trap.dark, white, channels);
  const [R] = closeBlock(
    { signal: white, atMs: 0 },
    [{ signal, atMs: 0.5 }],
    { signal: holdWhite(last, head), atMs: 1 },
    { trap: signalOf(trap, head), tile: TILE },
    channels,
  );
  return { R: R!, truth };
}

describe('a whole session at the bench', () => {
  const outcome = (fault: (typeof FAULTS)[number]) => {
    let [taken, wrong] = [0, 0];
    const reasons = new Set<string>();
    const trials = 150;
    for (let seed = 1; seed <= trials; seed++) {
      try {
        const { R, truth } = take(seed, fault);
        taken++;
        if (!truth.every((t, c) => Math.abs(R[c]! - t) < RIGHT(t))) wrong++;
      } catch (error) {
        if (!(error instanceof ReadingRefused)) throw error;
        reasons.add(error.reason);
      }
    }
    return { taken: taken / trials, wrong, reasons: [...reasons] };
  };

  it.each(['none', 'steady room light', 'lamp fades a little'] as const)(
    'with %s is taken, and right',
    (fault) => {
      const { taken, wrong } = outcome(fault);
      expect(wrong).toBe(0);
      expect(taken).toBeGreaterThan(0.95);
    },
  );

  it.each([
    ['room light on the swatch', 'light-leak'],
    ['saturated', 'saturated'],
    ['gain changed', 'settings-differ'],
    ['lamp fades a lot', 'white-drift'],
    ['port smeared', 'white-drift'],
    ['count lost', 'not-a-number'],
    ['lamp off', 'lamp-state'],
    ['dark lit', 'lamp-state'],
    ['white lifted', 'white-drift'],
  ] as const)('with %s is refused, for that reason', (fault, reason) => {
    expect(outcome(fault)).toEqual({ taken: 0, wrong: 0, reasons: [reason] });
  });
});
