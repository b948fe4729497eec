/** The program's own driver against the firmware: every answer of the real core, over a real pseudo-terminal. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { connectHead } from '../../src/device/head/connect.ts';
import type { ConnectOptions } from '../../src/device/head/connect.ts';
import type { Head } from '../../src/device/head/head.ts';
import type { HeadReading } from '../../src/device/head/reading.ts';
import { SerialTransport } from '../../src/device/serial/serial-transport.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import { BenchHead } from './bench/bench-head.ts';
import { buildFirmware } from './bench/build.ts';
import type { Build } from './bench/build.ts';

const COUNTS = [11663, 17490, 23317, 29144, 34971, 40797, 34971, 23317, 58278, 11663];

let build: Build;
let bench: BenchHead;
let head: Head | undefined;

beforeAll(async () => {
  build = await buildFirmware('native');
}, 120_000);
afterAll(() => build.remove());
afterEach(async () => {
  await head?.close();
  await bench.stop();
});

async function begin(options: ConnectOptions = {}, ...bare: readonly string[]): Promise<Head> {
  bench = await BenchHead.native(build.folder, '--fast', ...bare);
  await bench.tell('noise 0');
  head = await connectHead(new SerialTransport(bench.path), systemClock, options);
  return head;
}

const kindOf = (work: Promise<unknown>): Promise<unknown> =>
  work.then(
    () => 'no fault',
    (fault: { kind?: string }) => fault.kind,
  );

describe('the driver on the firmware', () => {
  it('learns what the head is', async () => {
    const { identity, kind, geometry, channels, limits, settings, checksum } = await begin();
    expect(identity).toEqual({ model: 'HEAD-8', serial: 'SN0001', firmware: '0.1.0', protocol: '1.1' });
    expect([kind, geometry, checksum]).toEqual(['bands', '45/0', true]);
    expect(channels.map((channel) => channel.name).join()).toBe('F1,F2,F3,F4,F5,F6,F7,F8,CLEAR,NIR');
    expect(channels[0]).toMatchObject({ centreNm: 415, fwhmNm: 26 });
    expect(channels[8]).toMatchObject({ centreNm: undefined, fwhmNm: undefined });
    expect(limits).toEqual({
      gains: [0.5, 1, 2, 4, 8, 16, 32, 64, 128, 256, 512],
      apertureMinS: 0.005004,
      apertureMaxS: 0.999966,
    });
    expect(settings).toEqual({ gain: 64, apertureS: 0.18209, averages: 1, passes: 2, fullScale: 65500 });
  });

  it('reads light and dark, and reads back what it sets', async () => {
    const here = await begin({ settings: { gain: 32, apertureS: 0.1, averages: 4 } });
    expect(here.settings).toEqual({ gain: 32, apertureS: 0.10008, averages: 4, passes: 2, fullScale: 36000 });
    await here.configure({ gain: 64, apertureS: 0.182, averages: 1 });
    const light = await here.read();
    const dark = await here.readDark();
    expect(light).toMatchObject({
      counts: COUNTS,
      lamp: true,
      settling: false,
      lightChanged: false,
      kelvin: 298.15,
    });
    expect(dark).toMatchObject({ counts: Array(10).fill(9), lamp: false });
    expect(dark.frame).toBe(light.frame + 1);
    expect(await here.temperature()).toBeCloseTo(298.15, 2);
  });

  it('names the channel that is full, and takes no reading of it', async () => {
    const here = await begin();
    await bench.light([1, 1.5, 2, 2.5, 3, 3.5, 6, 2, 5, 1]);
    await expect(here.read()).rejects.toMatchObject({ kind: 'saturated', details: { channels: ['F7'] } });
    await bench.light([1, 1.5, 2, 2.5, 3, 3.5, 3, 2, 5, 1]);
    await bench.tell('analogue 1'); // the counts look innocent
    await expect(here.read()).rejects.toMatchObject({ kind: 'saturated' });
    await bench.tell('analogue 0');
    expect((await here.read()).counts).toEqual(COUNTS);
  });

  it('says that the light changed within a frame', async () => {
    const here = await begin();
    await bench.tell('flicker 0.05');
    expect((await here.read()).lightChanged).toBe(true);
  });

  it('tells a loose sensor and a dead lamp from a reading', async () => {
    const here = await begin();
    await bench.tell('nack 1');
    await expect(here.read()).rejects.toMatchObject({
      kind: 'hardware',
      message: expect.stringContaining('-241') as string,
    });
    await bench.tell('nack 0');
    await bench.tell('lampbroken 1');
    await expect(here.read()).rejects.toMatchObject({
      kind: 'hardware',
      message: expect.stringContaining('512') as string,
    });
    expect((await here.condition()).lampUnstable).toBe(true);
    await bench.tell('lampbroken 0');
    expect((await here.read()).counts).toEqual(COUNTS);
  });

  it('takes a reading at the press of the button', async () => {
    const here = await begin();
    const pressed = new Promise<HeadReading>((resolve) => here.on('press', resolve));
    await here.armButton();
    await bench.tell('button 100');
    expect((await pressed).counts).toEqual(COUNTS);
    await here.disarmButton();
    expect((await here.condition()).waitingForButton).toBe(false);
  });

  it('takes no press for what the button was armed for afterwards', async () => {
    const here = await begin();
    const told: string[] = [];
    here.on('press', ({ waitedFor }) => told.push(`press for ${String(waitedFor)}`));
    here.on('press-set-aside', ({ waitedFor }) => told.push(`set aside for ${String(waitedFor)}`));
    await here.armButton('A');
    await bench.tell('button 400'); // the finger is down, and the contacts have hardly settled
    await here.armButton('B');
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
});

describe('a bad line between driver and firmware', () => {
  it.each([
    'cut',
    'cut 3',
    'flip',
    'flip 100',
    'drop',
    'drop 40',
    'silent',
    'glue',
    'flood',
    'dup',
    'slow 5',
  ])(
    'with one answer spoilt by "%s", a reading is right or a fault, and the next one is right',
    async (fault) => {
      const here = await begin();
      await bench.tell(`fault ${fault}`);
      const first = await here.read().then(
        (reading) => reading.counts,
        (error: Error) => error.name,
      );
      expect([COUNTS, 'DeviceFault']).toContainEqual(first);
      expect((await here.read()).counts).toEqual(COUNTS);
    },
  );

  it('with the cable pulled after any byte of a frame ends in "disconnected", and the head is found again', async () => {
    for (const at of [0, 1, 5, 30, 60, 90]) {
      const here = await begin();
      await bench.tell(`fault unplug ${at}`);
      expect(await kindOf(here.read()), `byte ${at}`).toBe('disconnected');
      expect(here.isConnected).toBe(false);
      await bench.tell('replug');
      head = await connectHead(new SerialTransport(bench.path), systemClock);
      expect((await head.read()).counts).toEqual(COUNTS);
      if (at < 90) await Promise.all([head.close(), bench.stop()]);
    }
  });

  it('finds a board that resets when the port opens and is deaf for 1.5 s', async () => {
    const started = Date.now();
    const here = await begin({}, '--reset-on-open', '1500');
    expect(Date.now() - started).toBeGreaterThan(1400);
    expect((await here.read()).frame).toBe(1);
  });

  it('notices a restart in between, brings settings and checksum back, and says so', async () => {
    const here = await begin({ settings: { gain: 32 } });
    let restarts = 0;
    here.on('restarted', ({ times }) => (restarts = times));
    await here.read();
    await bench.tell('reset');
    const again = await here.read().then(
      (reading) => reading.gain,
      (fault: { kind: string }) => fault.kind,
    );
    expect([32, 'no-crc', 'settings', 'sequence']).toContain(again);
    expect((await here.read()).gain).toBe(32);
    expect(restarts).toBe(1);
  });
});
