import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readChecked, withChecksum } from '../../src/device/framing/checked-line.ts';
import { crc16 } from '../../src/device/framing/crc16.ts';
import { quote, splitOutsideQuotes, unquote } from '../../src/device/framing/fields.ts';
import { LAST_FRAME_NUMBER, nextFrameNumber, parseFrame } from '../../src/device/framing/frame.ts';
import { LineSplitter } from '../../src/device/framing/line-splitter.ts';
import { parseHeadNumber } from '../../src/device/framing/number.ts';
import { BoundedLines } from '../../src/device/serial/bounded-lines.ts';

const bytes = (text: string): Uint8Array => Uint8Array.from(text, (c) => c.charCodeAt(0));

/** Both ways from bytes to lines: the pure splitter, and the limiter with ReadlineParser behind it. */
interface Lines {
  readonly lines: string[];
  readonly overlong: () => number;
  push(chunk: Uint8Array): void;
}

function splitter(longest: number): Lines {
  const lines: string[] = [];
  let overlong = 0;
  const made = new LineSplitter(
    longest,
    (line) => lines.push(line),
    () => overlong++,
  );
  return { lines, overlong: () => overlong, push: (chunk) => made.push(chunk) };
}

function serial(longest: number): Lines {
  const lines: string[] = [];
  let overlong = 0;
  const made = new BoundedLines(
    (line) => lines.push(line),
    () => overlong++,
    longest,
  );
  return { lines, overlong: () => overlong, push: (chunk) => made.push(Buffer.from(chunk)) };
}

describe.each([
  ['the splitter', splitter],
  ['the limiter in front of ReadlineParser', serial],
])('lines by %s', (_, make) => {
  const linesOf = async (text: string, longest = 40) => {
    const made = make(longest);
    made.push(bytes(text));
    await new Promise((resolve) => setImmediate(resolve));
    return { lines: made.lines, overlong: made.overlong() };
  };

  it('nothing comes of nothing, and empty lines vanish', async () => {
    expect(await linesOf('')).toEqual({ lines: [], overlong: 0 });
    expect(await linesOf('\n\r\n\r\r\n')).toEqual({ lines: [], overlong: 0 });
  });
  it('LF, CR and CRLF end a line', async () => {
    expect((await linesOf('one\ntwo\rthree\r\nfour')).lines).toEqual(['one', 'two', 'three']);
  });
  it('a line of the longest length passes, one byte more is dropped whole and told once', async () => {
    expect(await linesOf(`${'A'.repeat(40)}\n`)).toEqual({ lines: ['A'.repeat(40)], overlong: 0 });
    expect(await linesOf(`${'A'.repeat(900)}\nB\n`)).toEqual({ lines: ['B'], overlong: 1 });
  });
  it('a broken byte spoils its own line only', async () => {
    expect((await linesOf('a\xff\nOK\n')).lines).toEqual(['a\xff', 'OK']);
  });
  it('cutting the bytes anywhere changes nothing, and nothing longer than allowed comes out', async () => {
    const stream = fc.array(fc.constantFrom(10, 13, 65, 66, 0, 255), { maxLength: 60 });
    await fc.assert(
      fc.asyncProperty(stream, fc.array(fc.nat(60), { maxLength: 6 }), async (all, cuts) => {
        const whole = make(8);
        whole.push(Uint8Array.from(all));
        const parts = make(8);
        const places = [0, ...cuts.toSorted((a, b) => a - b), all.length];
        places.slice(1).forEach((end, i) => parts.push(Uint8Array.from(all.slice(places[i], end))));
        await new Promise((resolve) => setImmediate(resolve));
        expect(parts.lines).toEqual(whole.lines);
        expect(parts.overlong()).toBe(whole.overlong());
        expect(Math.max(0, ...whole.lines.map((line) => line.length))).toBeLessThanOrEqual(8);
      }),
    );
  });
});

describe('the checksum', () => {
  it('has the check value of its catalogue entry', () => {
    // Catalogue of parametrised CRC algorithms (reveng), CRC-16/IBM-3740 alias CCITT-FALSE: check 0x29b1.
    expect(crc16('123456789')).toBe(0x29b1);
    expect(crc16('')).toBe(0xffff);
  });
  it("agrees with Python's binascii.crc_hqx(data, 0xFFFF)", () => {
    // python3 -c "import binascii; print('%04X' % binascii.crc_hqx(b'0,\"No error\"', 0xFFFF))" and so on.
    expect(withChecksum('0,"No error"')).toBe('0,"No error",#H425F');
    expect(withChecksum('1')).toBe('1,#HC782');
  });
  it('sees every damage of one bit, and of two bits apart', () => {
    const line = withChecksum('17,0,64,1.8209E-1,1,2.981E2,3,11654,17481,23308');
    const flip = (text: string, bit: number): string =>
      text
        .split('')
        .map((c, i) => (i === bit >> 3 ? String.fromCharCode(c.charCodeAt(0) ^ (1 << (bit & 7))) : c))
        .join('');
    for (let bit = 0; bit < 8 * line.length; bit++) {
      expect(readChecked(flip(line, bit)).state, `bit ${bit}`).not.toBe('good');
      expect(readChecked(flip(flip(line, bit), (bit + 61) % (8 * line.length))).state).not.toBe('good');
    }
  });
  it('is taken off a good line, and its absence is told', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary-ascii' }), (text) => {
        expect(readChecked(withChecksum(text))).toEqual({ state: 'good', text });
      }),
    );
    expect(readChecked('1')).toEqual({ state: 'unchecked', text: '1' });
    expect(readChecked('1,#HC783')).toEqual({ state: 'damaged' });
  });
});

describe('fields', () => {
  it('separators inside strings do not separate', () => {
    expect(splitOutsideQuotes('"a,b",1', ',')).toEqual(['"a,b"', '1']);
    expect(splitOutsideQuotes('510,"Channel saturated;F7";1', ';')).toEqual([
      '510,"Channel saturated;F7"',
      '1',
    ]);
  });
  it('a string that is not closed was cut', () => {
    expect(splitOutsideQuotes('"F1",4.15E-7,"F', ',')).toBeUndefined();
  });
  it('a quoted string comes back', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(unquote(quote(text))).toBe(text);
      }),
    );
    expect(unquote('F1')).toBeUndefined();
    expect(unquote('"a"b"')).toBeUndefined();
  });
});

describe('numbers', () => {
  it.each([
    ['17', 17],
    ['1.8209E-1', 0.18209],
    ['0.5', 0.5],
    ['9.9E37', 'over-range'],
    ['-9.9E37', 'under-range'],
    ['9.91E37', 'not-a-number'],
    ['9.9e+37', 'over-range'],
    ['', undefined],
    [' 1', undefined],
    ['1 ', undefined],
    ['0x10', undefined],
    ['Infinity', undefined],
    ['1E999', undefined],
    ['1.2.3', undefined],
    ['--1', undefined],
  ])('"%s" is %s', (field, value) => expect(parseHeadNumber(field)).toBe(value));
});

describe('a frame', () => {
  // The example of hardware-notes/protocol.md, section 4.
  const line = '17,0,64,1.8209E-1,1,2.981E2,10,11654,17481,23308,29134,34961,40788,34961,23308,58269,11654';
  const parsed = (text: string, channels = 10) => parseFrame(text, channels);

  it('is read with its settings', () => {
    expect(parsed(line)).toEqual({
      ok: true,
      frame: {
        frame: 17,
        flags: 0,
        gain: 64,
        apertureS: 0.18209,
        lamp: true,
        kelvin: 298.1,
        counts: [11654, 17481, 23308, 29134, 34961, 40788, 34961, 23308, 58269, 11654],
      },
    });
  });
  it('without a temperature sensor has none', () => {
    expect(parsed(line.replace('2.981E2', '9.91E37'))).toMatchObject({
      ok: true,
      frame: { kelvin: undefined },
    });
  });
  it('keeps an over-range channel as such, never as a number', () => {
    expect(parsed(line.replace('58269', '9.9E37'))).toMatchObject({ ok: true });
    const reading = parsed(line.replace('58269', '9.9E37'));
    expect(reading.ok && reading.frame.counts[8]).toBe('over-range');
  });
  it.each([
    ['nothing', ''],
    ['a field missing', line.replace(',11654,17481', ',11654')],
    ['a field too many', `${line},1`],
    ['frame number 0', line.replace('17,', '0,')],
    ['frame number with a sign', line.replace('17,', '+17,')],
    ['a frame number beyond the last', line.replace('17,', '65536,')],
    ['unknown flags', line.replace('17,0', '17,64')],
    ['gain 0', line.replace('0,64', '0,0')],
    ['aperture below 0', line.replace('1.8209E-1', '-1.8209E-1')],
    ['aperture over range', line.replace('1.8209E-1', '9.9E37')],
    ['lamp neither on nor off', line.replace('1,2.981E2', '2,2.981E2')],
    ['lamp off without its flag', line.replace('1,2.981E2', '0,2.981E2')],
    ['lamp on with the flag for off', line.replace('17,0', '17,4')],
    ['an impossible temperature', line.replace('2.981E2', '2.981')],
    ['another number of counts', line.replace('2.981E2,10', '2.981E2,11')],
    ['a count below 0', line.replace('58269', '-58269')],
    ['a count that is no number', line.replace('58269', '58A69')],
    ['an empty count', line.replace('58269', '')],
    ['two frames glued', `${line.slice(0, 20)}${line}`],
  ])('with %s is no frame', (_, text) => expect(parsed(text).ok).toBe(false));
  it('of other channels than the catalogue promises is no frame', () => {
    expect(parsed(line, 9).ok).toBe(false);
    expect(parsed(line, 11).ok).toBe(false);
  });
  it('cut short anywhere is no frame, but for its last digits: which only the checksum sees', () => {
    for (let length = 0; length < line.lastIndexOf(',') + 2; length++) {
      expect(parsed(line.slice(0, length)).ok, line.slice(0, length)).toBe(false);
    }
    expect(parsed(line.slice(0, -1)).ok).toBe(true);
    expect(readChecked(withChecksum(line).replace('11654,#H', '1165,#H')).state).toBe('damaged');
  });
  it('anything at all is read or refused, without a throw', () => {
    fc.assert(fc.property(fc.string(), fc.nat(20), (text, n) => void parseFrame(text, n)));
  });
  it('numbers go round', () => {
    expect(nextFrameNumber(1)).toBe(2);
    expect(nextFrameNumber(LAST_FRAME_NUMBER)).toBe(1);
    expect(nextFrameNumber(0)).toBe(1);
  });
});
