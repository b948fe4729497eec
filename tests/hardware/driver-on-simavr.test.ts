/**
 * The ATmega328P binary, as it would be flashed, in a simulated chip with a modelled sensor on its two-wire bus, read
 * by the program's own driver. Needs avr-gcc and libsimavr; without them this file says so and is skipped.
 */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { connectHead } from '../../src/device/head/connect.ts';
import type { Head } from '../../src/device/head/head.ts';
import type { HeadReading } from '../../src/device/head/reading.ts';
import { SerialTransport } from '../../src/device/serial/serial-transport.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import { BenchHead } from './bench/bench-head.ts';
import { buildFirmware, simavrMissing } from './bench/build.ts';
import type { Build } from './bench/build.ts';

const missing = simavrMissing();
if (missing) console.warn(`SKIPPED: the ATmega328P firmware in simavr (${missing}).`);

/** ATmega328P: 32 KiB of flash less 2 KiB of boot loader; 2 KiB of RAM, of which the stack wants some. */
const FLASH_LIMIT = 30 * 1024;
const STATIC_RAM_LIMIT = 1200;
/** What must stay untouched: an interrupt on top of the deepest call, several times over. */
const STACK_RESERVE = 400;

describe.skipIf(missing !== undefined)('the ATmega328P firmware in a simulated chip', () => {
  let build: Build;
  let bench: BenchHead;
  let head: Head;

  beforeAll(async () => {
    build = await buildFirmware('avr', 'simavr', 'size');
  }, 180_000);
  afterAll(() => build.remove());
  afterEach(async () => {
    await head.close();
    await bench.stop();
  });

  async function begin(...options: readonly string[]): Promise<void> {
    bench = await BenchHead.simavr(build.folder, ...options);
    await bench.tell('noise 0');
    head = await connectHead(new SerialTransport(bench.path), systemClock);
  }

  it('fits the chip', async () => {
    await begin();
    const bytes = (name: string): number =>
      Number(new RegExp(`${name}:\\s+(\\d+) bytes`).exec(build.output)![1]);
    console.log(`Flash ${bytes('Program')} bytes, static RAM ${bytes('Data')} bytes.`);
    expect(bytes('Program')).toBeLessThan(FLASH_LIMIT);
    expect(bytes('Data')).toBeLessThan(STATIC_RAM_LIMIT);
  });

  it('leaves RAM for its stack after everything it does', async () => {
    await begin();
    await head.configure({ gain: 512, apertureS: 0.05, averages: 2 });
    await head.read().catch(() => undefined); // every channel full: ten errors
    await head.condition();
    await head.armButton();
    await head.disarmButton();
    const left = await bench.stackLeft();
    console.log(`${left} bytes of RAM never used.`);
    expect(left).toBeGreaterThan(STACK_RESERVE);
  });

  it('is found, described and read, light and dark', async () => {
    await begin();
    expect(head.identity).toEqual({ model: 'HEAD-8', serial: 'SN0001', firmware: '0.1.0', protocol: '1.1' });
    expect(head.checksum).toBe(true);
    expect(head.channels).toHaveLength(10);
    const light = await head.read();
    expect(light.counts).toEqual([11663, 17490, 23317, 29144, 34971, 40797, 34971, 23317, 58278, 11663]);
    expect(light.kelvin).toBeCloseTo(298.1, 0);
    expect((await head.readDark()).counts).toEqual(Array(10).fill(9));
  });

  it('counts in proportion to gain, aperture and averages', async () => {
    await begin();
    await head.configure({ gain: 16, apertureS: 0.05, averages: 4 });
    expect(head.settings.apertureS).toBeCloseTo(0.05004, 6);
    const { counts } = await head.read();
    counts.forEach((count, i) => {
      const light = [1, 1.5, 2, 2.5, 3, 3.5, 3, 2, 5, 1][i]! + 0.0008;
      expect(Math.abs(count - light * 16 * 50.04)).toBeLessThanOrEqual(0.5);
    });
  });

  it('tells saturation, a loose sensor and a dead lamp from a reading', async () => {
    await begin();
    await bench.light([1, 1.5, 2, 2.5, 3, 3.5, 6, 2, 5, 1]);
    await expect(head.read()).rejects.toMatchObject({ kind: 'saturated', details: { channels: ['F7'] } });
    await bench.tell('nack 1');
    await expect(head.read()).rejects.toMatchObject({ kind: 'hardware' });
    await bench.tell('nack 0');
    await bench.tell('lampbroken 1');
    await expect(head.read()).rejects.toMatchObject({ kind: 'hardware' });
  });

  it('takes a reading at the press of the button', async () => {
    await begin();
    const pressed = new Promise<HeadReading>((resolve) => head.on('press', resolve));
    await head.armButton();
    await bench.tell('button 100');
    expect((await pressed).frame).toBe(1);
    await head.disarmButton();
  });

  it('takes no press for what the button was armed for afterwards', async () => {
    await begin();
    const told: string[] = [];
    head.on('press', ({ waitedFor }) => told.push(`press for ${String(waitedFor)}`));
    head.on('press-set-aside', ({ waitedFor }) => told.push(`set aside for ${String(waitedFor)}`));
    await head.armButton('A');
    await bench.tell('button 400'); // the finger is down, and the contacts have hardly settled
    await head.armButton('B');
    expect(told.splice(0)).toEqual([expect.stringMatching(/^(press|set aside) for A$/)]);
    // Only a press that begins now counts: the one before may have to come up first.
    await expect
      .poll(
        async () => {
          await bench.tell('button 100');
          return told;
        },
        { interval: 600, timeout: 20_000 },
      )
      .toContain('press for B');
    expect(told).not.toContain('press for A');
  });

  it('is reset by the opening of its port, deaf for 1.5 s, and found all the same', async () => {
    const started = Date.now();
    await begin('--boot', '1500');
    expect(Date.now() - started).toBeGreaterThan(1400);
    expect((await head.read()).frame).toBe(1);
  });
});
