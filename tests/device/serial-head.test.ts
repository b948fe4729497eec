import { afterEach, describe, expect, it } from 'vitest';
import { connectHead } from '../../src/device/head/connect.ts';
import type { Head } from '../../src/device/head/head.ts';
import { SerialTransport } from '../../src/device/serial/serial-transport.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import { simulatedHead } from './simulated-head/simulated-head.ts';
import type { TerminalScript } from './simulated-head/simulated-head.ts';

let terminal: TerminalScript | undefined;
let head: Head | undefined;
afterEach(async () => {
  await head?.close();
  await terminal?.stop();
});

describe('a head on a pseudo-terminal', () => {
  it('is found, described and read', async () => {
    terminal = await simulatedHead();
    head = await connectHead(new SerialTransport(terminal.path), systemClock);
    expect(head.identity).toEqual({ model: 'HEAD-8', serial: 'SN0001', firmware: '0.1.0', protocol: '1.1' });
    expect(head.checksum).toBe(true);
    expect(head.channels).toHaveLength(10);
    const light = await head.read();
    expect(light.counts).toEqual([11654, 17481, 23308, 29134, 34961, 40788, 34961, 23308, 58269, 11654]);
  });
});
