/** The firmware by wire transcript: its core built for this computer, on a pseudo-terminal, with plain lines. */
import { readFileSync } from 'node:fs';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { crc16 } from '../../src/device/framing/crc16.ts';
import { BenchHead } from './bench/bench-head.ts';
import { buildFirmware } from './bench/build.ts';
import type { Build } from './bench/build.ts';
import { PlainLine } from './bench/plain-line.ts';

const PROTOCOL = new URL('../../hardware-notes/protocol.md', import.meta.url);
/** Light x gain x ms of the standard scene without noise: (1 + 0.0008 of room light) x 64 x 182.09 = 11663 and so on. */
const WHITE = '64,1.8209E-1,1,2.9815E2,10,11663,17490,23317,29144,34971,40797,34971,23317,58278,11663';
const DARK = '64,1.8209E-1,0,2.9815E2,10,9,9,9,9,9,9,9,9,9,9';

let build: Build;
let bench: BenchHead;
let line: PlainLine;

beforeAll(async () => {
  build = await buildFirmware('native');
}, 120_000);
afterAll(() => build.remove());

async function begin(...options: readonly string[]): Promise<void> {
  bench = await BenchHead.native(build.folder, '--fast', ...options);
  await bench.tell('noise 0');
  line = new PlainLine(bench.path);
}
afterEach(async () => {
  line.close();
  await bench.stop();
});

describe('the exchanges of the protocol page, section 9', () => {
  beforeEach(() => begin());

  it('go as printed, but for the counts, which depend on the light', async () => {
    const section = readFileSync(PROTOCOL, 'utf8').split('## 9.')[1]!.split('## 10.')[0]!;
    const steps = section.split('\n').flatMap((text) => /^ {4}([<>(]) ?(.*)$/.exec(text)?.slice(1, 3) ?? []);
    expect(steps.length).toBeGreaterThan(30);
    let checked = 0;
    for (let i = 0; i < steps.length; i += 2) {
      const [kind, text] = [steps[i], steps[i + 1]!];
      if (kind === '>') line.send(`${text}\n`);
      else if (kind === '(') {
        await bench.tell('button 100');
        await expect.poll(() => line.ask('STAT:OPER:COND?'), { timeout: 20_000 }).toBe('0');
      } else {
        expect(sameShape(await line.line(), text)).toBe(true);
        checked++;
      }
    }
    expect(checked).toBeGreaterThanOrEqual(10);
    expect(await line.quiet()).toBe('');
  });
});

/** Equal, or a frame whose numbers before the counts agree (temperature aside) and that has as many counts. */
function sameShape(got: string, printed: string): boolean {
  if (got === printed) return true;
  const [a, b] = [got.split(','), printed.split(',')];
  const settings = (fields: string[]): string => [...fields.slice(0, 5), fields[6]].join();
  return (
    a.length === 17 &&
    b.length === 17 &&
    settings(a) === settings(b) &&
    Math.abs(Number(a[5]) - Number(b[5])) < 2
  );
}

describe('the head on its line', () => {
  beforeEach(() => begin());

  it('reads light and dark, and repeats the last frame', async () => {
    expect(await line.ask('READ:DARK?')).toBe(`1,4,${DARK}`);
    expect(await line.ask('READ?')).toBe(`2,0,${WHITE}`);
    expect(await line.ask('FETC?')).toBe(`2,0,${WHITE}`);
  });

  it('says nothing unless asked, and nothing to a set command', async () => {
    expect(await line.quiet()).toBe('');
    line.send('INP:GAIN 128\nSENS:APER 0.1\nOUTP 1\nNO:SUCH\n');
    expect(await line.quiet()).toBe('');
    expect(await line.ask('SYST:ERR:ALL?;:SYST:ERR:COUN?')).toBe('2'); // ERR:ALL? is not of this protocol
    expect(await line.ask('SYST:ERR?;SYST:ERR?')).toBe('-113,"Undefined header";-113,"Undefined header"');
  });

  it('takes CR, LF and CRLF, and a message in pieces', async () => {
    line.send('*OPC?\r\n*OPC?\r*OPC?\n\n\r\n*OP');
    expect(await line.quiet()).toBe('1\n1\n1\n');
    expect(await line.ask('C?')).toBe('1');
  });

  it('drops a message of more than 255 bytes and says so', async () => {
    line.send(`*IDN?${'x'.repeat(300)}\n`);
    expect(await line.ask('SYST:ERR?')).toBe('-363,"Input buffer overrun"');
  });

  it('answers a checksum that is right, frame by frame', async () => {
    expect(await line.ask('SYST:COMM:CRC 1;:SYST:ERR?')).toBe('0,"No error",#H425F');
    for (let i = 0; i < 20; i++) {
      const answer = await line.ask('READ?');
      const [, body, sum] = /^(.*),#H([0-9A-F]{4})$/.exec(answer)!;
      expect(parseInt(sum!, 16)).toBe(crc16(body!));
    }
  });

  it('sends a saturated channel as over range, never as full scale, and names it in the queue', async () => {
    await bench.light([1, 1.5, 2, 2.5, 3, 3.5, 6, 2, 5, 1]);
    expect(await line.ask('READ?')).toBe(`1,1,${WHITE.replace('34971,23317,58', '9.9E37,23317,58')}`);
    expect(await line.ask('SYST:ERR?')).toBe('510,"Channel saturated;F7"');
  });

  it('answers not a number when the sensor wire is loose, and is well again when it is not', async () => {
    await bench.tell('nack 1');
    expect(await line.ask('READ?;SYST:ERR?;*TST?')).toBe('9.91E37;-241,"Hardware missing;sensor";1');
    await bench.tell('nack 0');
    expect(await line.ask('READ?')).toBe(`1,0,${WHITE}`);
  });

  it('takes no light frame without its lamp', async () => {
    await bench.tell('lampbroken 1');
    expect(await line.ask('READ?;SYST:ERR?;*TST?')).toBe('9.91E37;512,"Lamp;no current";2');
  });

  it('survives what a modem manager sends to every new port', async () => {
    line.send('AT\rAT+GMI\r\nATI\r~\x7f\x00\xff\r');
    await line.quiet();
    expect(await line.ask('*IDN?')).toBe('TINTLADDER,HEAD-8,SN0001,0.1.0');
  });
});

describe('bench faults', () => {
  beforeEach(() => begin());

  it('spoil one answer and only one', async () => {
    const whole = '1\n';
    const seen: Record<string, string> = {};
    for (const fault of ['cut 1', 'dup', 'flip 0', 'silent', 'flood 40', 'slow 20', 'drop 0', 'glue']) {
      await bench.tell(`fault ${fault}`);
      line.send('*OPC?\n');
      seen[fault] = await line.quiet(200);
      line.send('\n*OPC?\n');
      expect(await line.quiet(), fault).toBe(whole);
    }
    expect(seen).toEqual({
      'cut 1': '1',
      dup: '1\n1\n',
      'flip 0': '0\n',
      silent: '',
      'flood 40': 'A'.repeat(40),
      'slow 20': '1\n',
      'drop 0': '\n',
      glue: '1',
    });
  });

  it('can be asked for on the line as SIM: words, which the firmware itself does not know', async () => {
    line.send('SIM:LIGHT 2,2,2,2,2,2,2,2,2,2\n');
    expect(await line.ask('READ?')).toContain(',10,23317,23317,');
    expect(await line.ask('SIM:NONSENSE;:SYST:ERR?')).toBe('-113,"Undefined header"');
  });

  it('are the same for the same seed', async () => {
    const session = async (): Promise<string[]> => {
      line.close();
      await bench.stop();
      await begin('--seed', '7');
      await bench.tell('noise 0.5');
      return [await line.ask('READ?'), await line.ask('READ?')];
    };
    const [one, two] = [await session(), await session()];
    expect(one).toEqual(two);
    expect(one[0]!.slice(2)).not.toBe(one[1]!.slice(2));
  });
});

describe('power', () => {
  it('cut while saving leaves the old or the new channel data; kept data come back', async () => {
    const store = `${build.folder}/store`;
    await begin('--store', store);
    line.send('CAL:CHAN 1,427NM,31NM\n');
    expect(await line.ask('SENS:CHAN:CAT? 1,1')).toBe('"F1",4.27E-7,3.1E-8');
    line.close();
    await bench.stop();
    await begin('--store', store);
    expect(await line.ask('SENS:CHAN:CAT? 1,1;*TST?;*ESR?')).toBe('"F1",4.27E-7,3.1E-8;0;128');
  });
});
