import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { flatSpectrum } from '../../src/colour/grid.ts';
import type { Spectrum } from '../../src/colour/grid.ts';
import { tristimulusWeights } from '../../src/colour/tristimulus.ts';
import { xyzOf } from '../../src/colour/xyz.ts';
import { connectHead } from '../../src/device/head/connect.ts';
import type { HeadReading } from '../../src/device/head/reading.ts';
import { STILL_TRAITS } from '../../src/device/practice/light.ts';
import { practiceHead } from '../../src/device/practice/practice-head.ts';
import type { PracticeOptions } from '../../src/device/practice/practice-instrument.ts';
import { seen } from '../../src/device/practice/sensor.ts';
import type { PracticeVariant } from '../../src/device/practice/sensor.ts';
import type { PracticeSurface } from '../../src/device/practice/surfaces.ts';
import {
  PRACTICE_BLACK_TRAP,
  PRACTICE_CHECK_TILE,
  PRACTICE_WHITE_TILE,
} from '../../src/device/practice/surfaces.ts';
import { SimulatedClock } from './simulated-clock.ts';

/** Counts are whole: at 1000 to 46 000 of them, a reflectance factor from four of them is good to about this. */
const WHOLE_COUNTS = 0.0006;
/** MEAS:XYZ? knows nothing of dark level and flare: together under 1 % of white. */
const FACTORY_XYZ = 1;

async function connected(options: PracticeOptions = {}) {
  const clock = new SimulatedClock();
  const transport = practiceHead(clock, options);
  const head = await clock.run(connectHead(transport, clock));
  const { instrument } = transport;
  const read = async (surface?: PracticeSurface): Promise<HeadReading> => {
    if (surface) instrument.place(surface);
    return clock.run(head.read());
  };
  return { clock, transport, instrument, head, read };
}

const meanAndSd = (values: readonly number[]): { mean: number; sd: number } => {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  const squares = values.reduce((a, b) => a + (b - mean) ** 2, 0);
  return { mean, sd: Math.sqrt(squares / (values.length - 1)) };
};

describe('the practice head', () => {
  it('knows every command of hardware-notes/protocol.md that is not optional, and no more answers than it should', async () => {
    const { instrument, clock } = await connected();
    const text = readFileSync(new URL('../../hardware-notes/protocol.md', import.meta.url), 'utf8');
    const table = text.slice(text.indexOf('## 3. Commands'), text.indexOf('## 4. Frame'));
    const rows = table.split('\n').filter((row) => row.startsWith('| `') && !row.includes('| opt.'));
    const commands = rows.flatMap((row) => {
      const names = [...(row.split(' | ')[0] ?? '').matchAll(/`([^`]+)`/g)].map((found) => found[1] ?? '');
      const first = (names[0] ?? '').replace(/\\.*$/, '').replace(/ \[.*\]$/, '');
      return names.map((name) =>
        name.startsWith('?') ? `${first.split(' ')[0]}?` : name.replace(/^:/, 'STATus:OPERation:'),
      );
    });
    expect(commands.length).toBeGreaterThan(45);
    for (const written of commands) {
      if (written.startsWith('MEASure:XYZ')) continue; // tristimulus heads only
      const long = written.replace(/[[\]]/g, '').replace(/\\.*$/, '').split(' ')[0] ?? '';
      instrument.desk.clear();
      const answer = await clock.run(instrument.desk.execute(long));
      const error = instrument.desk.nextError();
      expect(error, long).not.toMatch(/-113|-102/);
      if (!long.endsWith('?')) expect(answer, long).toBeUndefined();
    }
  });

  it.each([
    ['bands-8', 'bands', 9],
    ['spectral-36', 'spectral', 36],
    ['spectral-31', 'spectral', 31],
    ['xyz', 'tristimulus', 3],
  ] as const)('comes as %s', async (variant, kind, channels) => {
    const { head, read } = await connected({ variant });
    expect(head.kind).toBe(kind);
    expect(head.geometry).toBe('45/0');
    expect(head.channels).toHaveLength(channels);
    const { counts } = await read();
    expect(counts).toHaveLength(channels);
    // The tile stays below full scale and clear of the dark level in every channel.
    expect(Math.max(...counts)).toBeLessThan(0.85 * head.settings.fullScale);
    expect(Math.min(...counts)).toBeGreaterThan(1000);
  });

  it('gives raw counts and the settings they were taken with', async () => {
    const { head, clock } = await connected({ traits: STILL_TRAITS });
    const light = await clock.run(head.read());
    expect(light).toMatchObject({ frame: 1, gain: 64, apertureS: 0.18209, lamp: true, settling: false });
    const dark = await clock.run(head.readDark());
    expect(dark).toMatchObject({ frame: 2, lamp: false });
    expect(Math.max(...dark.counts)).toBeLessThan(Math.min(...light.counts) / 100);
  });

  it('the same seed gives the same counts, another seed others', async () => {
    const countsOf = async (seed: number) => (await (await connected({ seed })).read()).counts;
    expect(await countsOf(3)).toEqual(await countsOf(3));
    expect(await countsOf(3)).not.toEqual(await countsOf(4));
  });

  it.each<PracticeVariant>(['bands-8', 'spectral-36', 'xyz'])(
    'without noise, dark, white and trap give back the reflectance its channels see: %s',
    async (variant) => {
      const { head, read, clock, instrument } = await connected({ variant, traits: STILL_TRAITS });
      const reflectance: Spectrum = Float64Array.from(
        PRACTICE_CHECK_TILE,
        (r, i) => 0.1 + 1.4 * r - 0.002 * i,
      );
      const lit = async (surface: PracticeSurface): Promise<number[]> => {
        const light = await read(surface);
        const dark = await clock.run(head.readDark());
        return light.counts.map((count, i) => count - dark.counts[i]!);
      };
      const white = await lit({ kind: 'white-tile' });
      const black = await lit({ kind: 'black-trap' });
      const swatch = await lit({ kind: 'swatch', reflectance });
      instrument.sensor.channels.forEach((channel, i) => {
        const [Rw, Rb] = [seen(channel, PRACTICE_WHITE_TILE), seen(channel, PRACTICE_BLACK_TRAP)];
        // R = Rb + (Rw - Rb) (S - B) / (W - B), all dark-subtracted: black-trap correction.
        const R = Rb + ((Rw - Rb) * (swatch[i]! - black[i]!)) / (white[i]! - black[i]!);
        expect(Math.abs(R - seen(channel, reflectance)), channel.name).toBeLessThan(WHOLE_COUNTS);
      });
    },
  );

  it('tells the response of its channels over the wire', async () => {
    const { head, instrument } = await connected();
    const response = head.channels[0]!.response!;
    expect(response).toMatchObject({ startNm: 380, stepNm: 10 });
    const told = response.values.map((value, i) =>
      Math.abs(value - instrument.sensor.channels[0]!.response[i]!),
    );
    expect(Math.max(...told)).toBeLessThan(1e-5); // five significant digits
  });

  it('XYZ by its factory matrix agrees with the weights of ASTM E308', async () => {
    const { head, clock, instrument } = await connected({ variant: 'xyz', traits: STILL_TRAITS });
    instrument.place({ kind: 'check-tile' });
    const { XYZ, observer, illuminant } = await clock.run(head.xyz());
    const { X, Y, Z } = xyzOf(PRACTICE_CHECK_TILE, tristimulusWeights('D65/10deg'));
    expect([observer, illuminant]).toEqual([10, 'D65']);
    [X, Y, Z].forEach((value, i) => expect(Math.abs(XYZ[i]! - value)).toBeLessThan(FACTORY_XYZ));
  });
});

describe('its faults are those of a real head', () => {
  it('noise: repeats without moving scatter less than repeats with', async () => {
    const { read } = await connected({ seed: 5, traits: { warmUp: 0, driftPerHour: 0 } });
    await read({ kind: 'white-tile' });
    const still: number[] = [];
    for (let i = 0; i < 60; i++) still.push((await read()).counts[6]!);
    const moved: number[] = [];
    for (let i = 0; i < 60; i++) moved.push((await read({ kind: 'white-tile' })).counts[6]!);
    const a = meanAndSd(still);
    const b = meanAndSd(moved);
    // Design: 0.06 % of white from the counts, 0.15 % more from placing; four standard errors of an sd of 60 wide.
    expect(a.sd / a.mean).toBeGreaterThan(0.0006 * 0.63);
    expect(a.sd / a.mean).toBeLessThan(0.0006 * 1.37);
    expect(b.sd / b.mean).toBeGreaterThan(Math.hypot(0.0006, 0.0015) * 0.63);
    expect(b.sd / b.mean).toBeLessThan(Math.hypot(0.0006, 0.0015) * 1.37);
  });

  it('averaging inside the head brings the noise down', async () => {
    const { read, head, clock } = await connected({ seed: 5, traits: { warmUp: 0, placement: 0 } });
    await clock.run(head.configure({ averages: 16, apertureS: 0.02 }));
    const values: number[] = [];
    for (let i = 0; i < 40; i++) values.push((await read()).counts[6]!);
    await clock.run(head.configure({ averages: 1 }));
    const single: number[] = [];
    for (let i = 0; i < 40; i++) single.push((await read()).counts[6]!);
    expect(meanAndSd(values).sd).toBeLessThan(meanAndSd(single).sd / 2);
  });

  it('a cold lamp settles, and says so until it has', async () => {
    const { read, clock } = await connected({ traits: { placement: 0, shot: 0, readNoise: 0 } });
    const cold = await read();
    expect(cold.settling).toBe(true);
    await clock.pass(120_000);
    const warm = await read();
    expect(warm.settling).toBe(false);
    expect(warm.counts[6]! / cold.counts[6]!).toBeGreaterThan(1.01);
    await clock.pass(1_800_000);
    const later = await read();
    // Half an hour at 0.4 % an hour.
    expect(later.counts[6]! / warm.counts[6]!).toBeCloseTo(1 - 0.002, 3);
  });

  it('room light shows in the dark frame on a swatch, and not on the trap', async () => {
    const { head, clock, instrument } = await connected({ traits: { ...STILL_TRAITS, ambientLeak: 0.02 } });
    const swatch = (await clock.run(head.readDark())).counts[4]!;
    instrument.place({ kind: 'black-trap' });
    const trap = (await clock.run(head.readDark())).counts[4]!;
    expect(swatch - trap).toBeGreaterThan(0.002 * 0.7 * head.settings.fullScale);
  });

  it('too much light saturates by name, and the next reading at a lower gain is good', async () => {
    const { head, clock, instrument } = await connected({ traits: STILL_TRAITS });
    instrument.place({ kind: 'swatch', reflectance: flatSpectrum(0.9) });
    await clock.run(head.configure({ gain: 128 }));
    await expect(clock.run(head.read())).rejects.toMatchObject({
      kind: 'saturated',
      details: { channels: expect.arrayContaining(['F7']) as unknown },
    });
    await clock.run(head.configure({ gain: 64 }));
    expect((await clock.run(head.read())).frame).toBe(2);
  });

  it('basic counts agree between apertures: it is linear in time', async () => {
    const { head, clock } = await connected({ traits: STILL_TRAITS });
    const basic: number[] = [];
    for (const apertureS of [0.18, 0.09, 0.045]) {
      await clock.run(head.configure({ apertureS }));
      const [light, dark] = [await clock.run(head.read()), await clock.run(head.readDark())];
      basic.push((light.counts[6]! - dark.counts[6]!) / (light.gain * light.apertureS));
    }
    for (const value of basic) expect(Math.abs(value / basic[0]! - 1)).toBeLessThan(WHOLE_COUNTS);
  });

  it('its button takes a reading only while it is waited for', async () => {
    const { head, clock, instrument } = await connected();
    await clock.run(instrument.press());
    expect(instrument.frameNumber).toBe(0);
    await clock.run(head.armButton());
    const pressed = new Promise<HeadReading>((resolve) => head.on('press', resolve));
    void instrument.press();
    expect(await clock.run(pressed)).toMatchObject({ frame: 1, lamp: true });
  });
});
