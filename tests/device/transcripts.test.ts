/**
 * Wire transcripts: (sent, answered) pairs played over a real pseudo-terminal by simulated-head/transcript.py. A line
 * that is not the next pair's, and a pair that is never used, both fail. The answers are those of
 * hardware-notes/protocol.md; checksums are by Python's binascii.crc_hqx(data, 0xFFFF).
 */
import { describe, expect, it } from 'vitest';
import { connectHead } from '../../src/device/head/connect.ts';
import type { ConnectOptions } from '../../src/device/head/connect.ts';
import type { Head } from '../../src/device/head/head.ts';
import { SerialTransport } from '../../src/device/serial/serial-transport.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import { SETTINGS, plainHead } from './simulated-head/plain-head.ts';
import { transcript } from './simulated-head/simulated-head.ts';
import type { Pair } from './simulated-head/simulated-head.ts';

const CONNECTED = plainHead('1.0');

async function played(
  pairs: readonly Pair[],
  use: (head: Head) => Promise<void>,
  options: ConnectOptions = {},
) {
  const { path, finish } = await transcript(pairs);
  const head = await connectHead(new SerialTransport(path), systemClock, { heartbeatMs: 60_000, ...options });
  try {
    await use(head);
  } finally {
    await head.close();
  }
  expect(await finish()).toEqual({ unused: [], unexpected: [] });
}

describe('a transcript', () => {
  it('fails on a pair that is not used', async () => {
    const { finish } = await transcript([['*IDN?', 'never asked']]);
    expect(await finish()).toEqual({ unused: ['*IDN?'], unexpected: [] });
  });
  it('fails on a line that is not expected', async () => {
    const { path, finish } = await transcript([]);
    const port = new SerialTransport(path);
    await expect(connectHead(port, systemClock, { probeMs: 200 })).rejects.toMatchObject({
      kind: 'no-answer',
    });
    expect(await finish()).toEqual({ unused: [], unexpected: ['*IDN?'] });
  });
});

describe('what is said on the wire', () => {
  it('to learn what a head is', () =>
    played(CONNECTED, async (head) => {
      expect(head.identity).toEqual({
        model: 'HEAD-2',
        serial: 'SN0042',
        firmware: '0.1.0',
        protocol: '1.0',
      });
      expect(head).toMatchObject({ kind: 'bands', geometry: '45/0', checksum: false });
      expect(head.channels).toEqual([
        { name: 'blue', centreNm: 450, fwhmNm: 30 },
        { name: 'clear', centreNm: undefined, fwhmNm: undefined },
      ]);
      expect(head.limits).toEqual({ gains: [1, 4, 16, 64], apertureMinS: 0.0024, apertureMaxS: 0.614 });
      expect(head.settings).toEqual({ gain: 16, apertureS: 0.01, averages: 1, passes: 1, fullScale: 65535 });
    }));

  it('when a board that was deaf answers all probes at once: the later answers are noise', () => {
    const [idn, ...rest] = CONNECTED as [Pair, ...Pair[]];
    const twice: Pair[] = [
      ['*IDN?', null],
      ['*IDN?', `${idn[1]}\r\n${idn[1]}\r\n\r\n${idn[1]}`],
    ];
    return played(
      [...twice, ...rest, ['SENS:FRAM?', '0'], ['READ?', '1,0,16,1.0000E-2,1,2.981E2,2,5,6']],
      async (head) => {
        expect((await head.read()).counts).toEqual([5, 6]);
        expect(head.health.noiseLines).toBe(2);
      },
    );
  });

  it('when the next answer is glued to a cut one: no reading, the line proved, and asked once more', () =>
    played(
      [
        ...CONNECTED,
        ['SENS:FRAM?', '17'],
        ['READ?', '18,0,16,1.0019,0,16,1.0000E-2,1,2.981E2,2,1200,34000'],
        ['', null],
        ['*OPC?', '1'],
        ['*CLS', null],
        ['SENS:FRAM?', '18'],
        ['READ?', '19,0,16,1.0000E-2,1,2.981E2,2,1200,34000'],
      ],
      async (head) => {
        expect(await head.read()).toMatchObject({ frame: 19, counts: [1200, 34000] });
        expect(head.health.retries).toBe(1);
      },
    ));

  it('to read light and dark: the number of the last frame is asked for once', () =>
    played(
      [
        ...CONNECTED,
        ['SENS:FRAM?', '41'],
        ['READ?', '42,8,16,1.0000E-2,1,2.981E2,2,1200,34000'],
        ['READ:DARK?', '43,12,16,1.0000E-2,0,9.91E37,2,7,9'],
      ],
      async (head) => {
        expect(await head.read()).toMatchObject({
          frame: 42,
          settling: true,
          kelvin: 298.1,
          counts: [1200, 34000],
        });
        expect(await head.readDark()).toMatchObject({
          frame: 43,
          lamp: false,
          kelvin: undefined,
          counts: [7, 9],
        });
      },
    ));

  it('to set gain, aperture and averages: each with the error queue, then read back', () =>
    played(
      [
        ...CONNECTED,
        ['INP:GAIN 64;:SYST:ERR?', '0,"No error"'],
        ['SENS:APER 0.182;:SYST:ERR?', '0,"No error"'],
        ['SENS:AVER:COUN 4;:SYST:ERR?', '0,"No error"'],
        [SETTINGS, '64;1.8240E-1;4;1;65535'],
      ],
      async (head) => {
        const settings = await head.configure({ gain: 64, apertureS: 0.182, averages: 4 });
        expect(settings).toMatchObject({ gain: 64, apertureS: 0.1824, averages: 4 });
      },
    ));

  it('when the head keeps another gain than it was given', () =>
    played(
      [...CONNECTED, ['INP:GAIN 64;:SYST:ERR?', '0,"No error"'], [SETTINGS, '16;1.0000E-2;1;1;65535']],
      async (head) => {
        await expect(head.configure({ gain: 64 })).rejects.toMatchObject({ kind: 'settings' });
        expect(head.settings.gain).toBe(16);
      },
    ));

  it('when a frame is damaged: end the line, prove it, ask for the number, ask once more', () =>
    played(
      [
        ...CONNECTED,
        ['SENS:FRAM?', '0'],
        ['READ?', '1,0,16,1.0000E-2,1,2.981E2,2,12'],
        ['', null],
        ['*OPC?', '1'],
        ['*CLS', null],
        ['SENS:FRAM?', '1'],
        ['READ?', '2,0,16,1.0000E-2,1,2.981E2,2,1201,34001'],
      ],
      async (head) => {
        expect(await head.read()).toMatchObject({ frame: 2, counts: [1201, 34001] });
        expect(head.health.retries).toBe(1);
      },
    ));

  it('when a late answer comes in place of the proof: the next proof is another question', () =>
    played(
      [
        ...CONNECTED,
        ['SENS:FRAM?', '0'],
        ['READ?', 'x'],
        ['', null],
        ['*OPC?', '1,0,16,1.0000E-2,1,2.981E2,2,1200,34000'],
        ['*OPC?;*OPC?', '1;1'],
        ['*CLS', null],
        ['SENS:FRAM?', '1'],
        ['READ?', '2,0,16,1.0000E-2,1,2.981E2,2,1201,34001'],
      ],
      async (head) => expect((await head.read()).frame).toBe(2),
    ));

  it('when the line cannot be proved: the head is given up', () =>
    played(
      [
        ...CONNECTED,
        ['SENS:FRAM?', '0'],
        ['READ?', 'x'],
        ['', null],
        ['*OPC?', 'x'],
        ['*OPC?;*OPC?', 'x'],
        ['*OPC?;*OPC?;*OPC?', 'x'],
      ],
      async (head) => {
        let told: unknown;
        head.on('down', (fault) => (told = fault));
        await expect(head.read()).rejects.toMatchObject({ kind: 'out-of-sync' });
        expect(told).toMatchObject({ kind: 'out-of-sync' });
        expect(head.isConnected).toBe(false);
      },
    ));

  it('when a channel saturates: its name from the queue, and no second question', () =>
    played(
      [
        ...CONNECTED,
        ['SENS:FRAM?', '0'],
        ['READ?', '1,1,16,1.0000E-2,1,2.981E2,2,1200,9.9E37'],
        ['SYST:ERR?', '510,"Channel saturated;clear"'],
        ['SYST:ERR?', '0,"No error"'],
      ],
      (head) =>
        expect(head.read()).rejects.toMatchObject({ kind: 'saturated', details: { channels: ['clear'] } }),
    ));

  it('to wait for the button, and to let go of it', () =>
    played(
      [
        ...CONNECTED,
        ['TRIG:SOUR EXT;:SYST:ERR?', '0,"No error"'],
        ['ABOR;:SENS:FRAM?', '6'],
        ['ABOR;:TRIG:SOUR EXT;:SENS:FRAM?;:INIT;:SYST:ERR?', '6;0,"No error"'],
        ['STAT:OPER:COND?', '32'],
        ['STAT:OPER:COND?', '16'],
        ['STAT:OPER:COND?', '0'],
        ['FETC?', '7,0,16,1.0000E-2,1,2.981E2,2,1200,34000'],
        ['ABOR;:TRIG:SOUR IMM;:SYST:ERR?', '0,"No error"'],
      ],
      async (head) => {
        const press = new Promise((resolve) => head.on('press', resolve));
        await head.armButton();
        expect(await press).toMatchObject({ frame: 7, counts: [1200, 34000] });
        await head.disarmButton();
      },
    ));

  it('with checksums: asked for, proved, and on every answer; a response table where the head has one', () =>
    played(
      [
        ...CONNECTED.slice(0, 3),
        ['SYST:COMM:CRC 1;:SYST:ERR?;:SYST:COMM:CRC?', '0,"No error";1,#H3FA9'],
        ['*OPC?', '1,#HC782'],
        ['SENS:FUNC?', '"SPEC",#H9461'],
        ['SENS:GEOM?', '"45/0",#H0E5E'],
        ['SENS:CHAN:COUN?', '1,#HC782'],
        ['SENS:CHAN:CAT?', '"500",5E-7,1E-8,#H438B'],
        ['SENS:CHAN:RESP? 1;:SYST:ERR:COUN?', '4.9E-7,1E-8,3,0.2,1,0.3;0,#H3B20'],
        ['INP:GAIN:CAT?', '1,4,#H0B55'],
        ['SENS:APER? MIN;:SENS:APER? MAX', '1E-3;1,#H3B23'],
        [SETTINGS, '16;1.0000E-2;1;1;65535,#HC267'],
        ['SENS:FRAM?', '0,#HD7A3'],
        ['READ?', '1,0,16,1.0000E-2,1,2.981E2,1,1200,#H550B'],
      ],
      async (head) => {
        expect(head.checksum).toBe(true);
        const response = { startNm: 490, stepNm: 10, values: [0.2, 1, 0.3] };
        expect(head.channels).toEqual([{ name: '500', centreNm: 500, fwhmNm: 10, response }]);
        expect((await head.read()).counts).toEqual([1200]);
      },
    ));
});
