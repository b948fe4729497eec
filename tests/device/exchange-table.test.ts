/**
 * What goes wrong on the wire, over a real pseudo-terminal against simulated-head/head.py: each case ends in a good
 * reading after one repeat, or in a typed fault with one sentence. Never in a wrong reading.
 */
import { describe, expect } from 'vitest';
import { connectHead } from '../../src/device/head/connect.ts';
import { DeviceFault } from '../../src/device/fault.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import { it } from './simulated-head/bench.ts';
import type { Bench } from './simulated-head/bench.ts';

const COUNTS = [11654, 17481, 23308, 29134, 34961, 40788, 34961, 23308, 58269, 11654];

async function faultOf(promise: Promise<unknown>): Promise<DeviceFault> {
  const outcome = await promise.then(
    (value) => value,
    (error: unknown) => error,
  );
  expect(outcome).toBeInstanceOf(DeviceFault);
  const fault = outcome as DeviceFault;
  // One sentence: it starts with a capital, ends with one full stop, and says what to do after a semicolon.
  expect(fault.message).toMatch(/^[A-Z/].*; .*[^.]\.$/s);
  expect(fault.message).not.toMatch(/undefined|\[object/);
  return fault;
}

/** One repeat puts it right, whatever the fault was. */
async function readsAfterOneRepeat(bench: Bench, args: readonly string[], fault: string): Promise<void> {
  const connected = await bench.plugged(args);
  await bench.terminal.command(`fault ${fault}`);
  expect((await connected.read()).counts).toEqual(COUNTS);
  expect(connected.health.retries).toBe(1);
  expect((await connected.readDark()).lamp).toBe(false);
  expect(connected.health.retries).toBe(1);
}

describe.concurrent.each([
  ['with checksums', []],
  ['without checksums', ['--no-crc']],
])('a damaged answer, %s', (_, args) => {
  it('cut in the middle, then silence', async ({ bench }) => readsAfterOneRepeat(bench, args, 'cut'));
  it('cut one byte before its end', async ({ bench }) => readsAfterOneRepeat(bench, args, 'cut_at 40'));
  it('no answer at all', async ({ bench }) => readsAfterOneRepeat(bench, args, 'silent'));
  it('16 kB without a line end', async ({ bench }) => readsAfterOneRepeat(bench, args, 'flood'));
  it('24 bytes of noise in front', async ({ bench }) => readsAfterOneRepeat(bench, args, 'noise 5'));
  it('comes after its time', async ({ bench }) => readsAfterOneRepeat(bench, args, 'late 1500'));
  it('comes twice: the second is noise', async ({ bench }) => {
    const connected = await bench.plugged(args);
    await bench.terminal.command('fault double');
    expect((await connected.read()).counts).toEqual(COUNTS);
    expect((await connected.read()).frame).toBe(2);
    expect(connected.health.noiseLines).toBeGreaterThanOrEqual(1);
  });
  it('comes again in place of the next: stale, and asked once more', async ({ bench }) => {
    const connected = await bench.plugged(args);
    await bench.terminal.command('fault remember');
    expect((await connected.read()).frame).toBe(1);
    await bench.terminal.command('fault repeat_old');
    expect((await connected.read()).frame).toBe(3);
    expect(connected.health.retries).toBe(1);
  });
  it('5 ms a byte is no fault', async ({ bench }) => {
    const connected = await bench.plugged(args);
    await bench.terminal.command('fault slow 5');
    expect((await connected.read()).counts).toEqual(COUNTS);
    expect(connected.health.retries).toBe(0);
  });
});

describe.concurrent('a wire that speaks by itself', () => {
  it('noise while nothing is asked is counted, and spoils nothing', async ({ bench }) => {
    const connected = await bench.plugged([], { heartbeatMs: 60_000 });
    await connected.read();
    // A burst, a line end, and a whole old frame that looks like an answer.
    const old = '2,0,64,5.0000E-3,1,2.981E2,10,1,1,1,1,1,1,1,1,1,1';
    for (const text of ['\u0000\u00ff\u00c3(\u00f8\u0080?', '\n', `${old}\r\n`])
      await bench.terminal.command(`raw ${Buffer.from(text, 'latin1').toString('hex')}`);
    await expect.poll(() => connected.health.noiseLines).toBe(2);
    expect(await connected.read()).toMatchObject({ frame: 2, counts: COUNTS });
    expect(connected.health.retries).toBe(0);
  });
});

describe.concurrent('a damaged digit', () => {
  it('is seen by the checksum and asked for again', async ({ bench }) =>
    readsAfterOneRepeat(bench, [], 'digit'));
  it('passes without checksums: which the head says of itself', async ({ bench }) => {
    const connected = await bench.plugged(['--no-crc']);
    expect(connected.checksum).toBe(false);
    await bench.terminal.command('fault digit');
    expect((await connected.read()).counts.at(-1)).toBe(11655);
  });
});

describe.concurrent('every answer damaged', () => {
  it.for([
    ['digit', 'crc'],
    ['silent', 'timeout'],
    ['flood', 'overlong'],
    ['repeat_old', 'sequence'],
  ])(
    '%s: ends in the fault %s after one repeat, and the next reading is good',
    async ([fault, kind], { bench }) => {
      const connected = await bench.plugged();
      await bench.terminal.command('fault remember');
      await connected.read();
      await bench.terminal.command(`fault-always ${fault}`);
      expect((await faultOf(connected.read())).kind).toBe(kind);
      expect(connected.health.retries).toBe(1);
      await bench.terminal.command('fault');
      expect((await connected.read()).counts).toEqual(COUNTS);
    },
  );
});

describe.concurrent('line ends', () => {
  it.for(['lf', 'crlf', 'cr'])('%s', async (eol, { bench }) => {
    const connected = await bench.plugged(['--eol', eol]);
    expect((await connected.read()).counts).toEqual(COUNTS);
    expect(connected.health).toEqual({ noiseLines: 0, retries: 0, restarts: 0 });
  });
});

describe.concurrent('starting', () => {
  it('garbage at boot is ignored', async ({ bench }) => {
    expect((await (await bench.plugged(['--garbage'])).read()).counts).toEqual(COUNTS);
  });
  it('a board deaf for 1.5 s after the port opens is found', async ({ bench }) => {
    const connected = await bench.plugged(['--garbage', '--boot-ms', '1500']);
    expect((await connected.read()).counts).toEqual(COUNTS);
    expect(connected.health.retries).toBe(0);
  });
  it('a device that never answers is no head, and hears nothing but *IDN?', async ({ bench }) => {
    const port = await bench.started(['--deaf']);
    const fault = await faultOf(connectHead(port, systemClock, { probeMs: 700 }));
    expect(fault.kind).toBe('no-answer');
  });
  it.for(['AT', '$GNGGA,092204.999,4250.5589,S,14718.5084,E,1,04,24.4', 'sh: *IDN?: not found'])(
    'something else on the port: %s',
    async (babble, { bench }) => {
      const port = await bench.started(['--babble', babble]);
      const fault = await faultOf(connectHead(port, systemClock, { probeMs: 700 }));
      expect(fault.kind).toBe('no-answer');
      expect(fault.message).toContain(babble.slice(0, 4));
      const sent = JSON.parse(await bench.terminal.command('sent')) as string[];
      expect(new Set(sent)).toEqual(new Set(['*IDN?']));
    },
  );
  it('another major version of the protocol is refused', async ({ bench }) => {
    const port = await bench.started(['--protocol', '2.0']);
    const fault = await faultOf(connectHead(port, systemClock));
    expect(fault.kind).toBe('protocol');
    expect(fault.message).toContain('2.0');
  });
  it('a later minor version is taken', async ({ bench }) => {
    expect((await bench.plugged(['--protocol', '1.7'])).identity.protocol).toBe('1.7');
  });
  it('another serial number than the wanted one is refused', async ({ bench }) => {
    const port = await bench.started(['--serial', 'SN0002']);
    const fault = await faultOf(connectHead(port, systemClock, { serial: 'SN0001' }));
    expect(fault.kind).toBe('other-head');
    expect(port.isOpen).toBe(false);
  });
  it('a spectral head of 36 channels, its catalogue read in pages', async ({ bench }) => {
    const connected = await bench.plugged(['--kind', 'SPEC']);
    expect(connected.kind).toBe('spectral');
    expect(connected.channels.map((c) => c.centreNm)).toEqual(
      Array.from({ length: 36 }, (_, i) => 380 + 10 * i),
    );
    expect((await connected.read()).counts).toHaveLength(36);
  });
  it('a tristimulus head', async ({ bench }) => {
    const connected = await bench.plugged(['--kind', 'XYZ']);
    expect(connected.kind).toBe('tristimulus');
    expect(connected.channels.map((c) => c.name)).toEqual(['X', 'Y', 'Z']);
    expect(await connected.xyz()).toEqual({ XYZ: [41.2, 43.1, 20.1], observer: 10, illuminant: 'D65' });
  });
});

describe.concurrent('settings', () => {
  it('are set and read back as the head rounds them', async ({ bench }) => {
    const settings = await (await bench.plugged()).configure({ gain: 16, apertureS: 0.01, averages: 2 });
    expect(settings).toEqual({ gain: 16, apertureS: 0.010008, averages: 2, passes: 2, fullScale: 65_500 });
  });
  it('a gain the head has not is refused before anything is sent', async ({ bench }) => {
    const fault = await faultOf((await bench.plugged()).configure({ gain: 3 }));
    expect(fault.kind).toBe('out-of-range');
    expect(fault.message).toContain('0.5, 1, 2, 4');
  });
  it('a refusal of the head itself comes back with its reason', async ({ bench }) => {
    const fault = await faultOf((await bench.plugged()).configure({ averages: 100 }));
    expect(fault.kind).toBe('refused');
    expect(fault.details.code).toBe(-222);
    expect(fault.message).toContain('Data out of range');
  });
  it('a command the head does not know is unsupported', async ({ bench }) => {
    const fault = await faultOf((await bench.plugged()).xyz());
    expect(fault.kind).toBe('unsupported');
  });
});

describe.concurrent('what the head itself cannot do', () => {
  it('a saturated channel is named, and not read again', async ({ bench }) => {
    const connected = await bench.plugged();
    await bench.terminal.command('set saturate 6');
    const fault = await faultOf(connected.read());
    expect(fault.kind).toBe('saturated');
    expect(fault.details.channels).toEqual(['F7']);
    expect(connected.health.retries).toBe(0);
    await bench.terminal.command('set saturate null');
    expect((await connected.read()).frame).toBe(2);
  });
  it('analogue saturation is refused though every count looks innocent', async ({ bench }) => {
    const connected = await bench.plugged();
    await bench.terminal.command('set analogue true');
    const fault = await faultOf(connected.read());
    expect(fault.kind).toBe('saturated');
    expect(fault.details.channels).toEqual(['F5']);
  });
  it('a loose sensor wire', async ({ bench }) => {
    const connected = await bench.plugged();
    await bench.terminal.command('set broken true');
    const fault = await faultOf(connected.read());
    expect(fault.kind).toBe('hardware');
    expect(fault.message).toContain('-240');
    await bench.terminal.command('set broken false');
    expect((await connected.read()).counts).toEqual(COUNTS);
  });
  it('light that changed within the frame is told, not hidden', async ({ bench }) => {
    const connected = await bench.plugged();
    await bench.terminal.command('set light_changed true');
    expect((await connected.read()).lightChanged).toBe(true);
  });
});

describe.concurrent('a restart by itself', () => {
  it('is noticed by the missing checksum; settings come back and the reading is repeated', async ({
    bench,
  }) => {
    const connected = await bench.plugged([], { settings: { gain: 16 } });
    const times: number[] = [];
    connected.on('restarted', (event) => times.push(event.times));
    await connected.read();
    await bench.terminal.command('restart');
    const reading = await connected.read();
    expect(reading.gain).toBe(16);
    expect(reading.counts).toEqual(COUNTS);
    expect(times).toEqual([1]);
  });
  it('is noticed without checksums by the settings in the frame', async ({ bench }) => {
    const connected = await bench.plugged(['--no-crc'], { settings: { gain: 16 } });
    await connected.read();
    await bench.terminal.command('restart');
    expect((await connected.read()).gain).toBe(16);
    expect(connected.health.restarts).toBe(1);
  });
});

describe.concurrent("the head's own button", () => {
  it('takes a reading', async ({ bench }) => {
    const connected = await bench.plugged();
    await connected.armButton();
    const pressed = new Promise((resolve) => connected.on('press', resolve));
    await bench.terminal.command('press');
    expect(await pressed).toMatchObject({ frame: 1, lamp: true, counts: COUNTS });
  });
  it('works on after a reading by the program', async ({ bench }) => {
    const connected = await bench.plugged();
    await connected.armButton();
    expect((await connected.read()).frame).toBe(1);
    const pressed = new Promise((resolve) => connected.on('press', resolve));
    await connected.armButton();
    await bench.terminal.command('press');
    expect(await pressed).toMatchObject({ frame: 2 });
  });
  it('a saturated press is told as a failure, not as a reading', async ({ bench }) => {
    const connected = await bench.plugged();
    await bench.terminal.command('set saturate 2');
    await connected.armButton();
    const failed = new Promise<DeviceFault>((resolve) =>
      connected.on('press-failed', ({ fault }) => resolve(fault)),
    );
    await bench.terminal.command('press');
    expect((await failed).kind).toBe('saturated');
  });
});
