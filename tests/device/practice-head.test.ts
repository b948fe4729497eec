import { describe, expect, it } from 'vitest';
import { connectHead } from '../../src/device/head/connect.ts';
import { STILL_TRAITS } from '../../src/device/practice/light.ts';
import { practiceHead } from '../../src/device/practice/practice-head.ts';
import type { PracticeOptions } from '../../src/device/practice/practice-instrument.ts';
import { SimulatedClock } from './simulated-clock.ts';

async function connected(options: PracticeOptions = {}) {
  const clock = new SimulatedClock();
  const transport = practiceHead(clock, options);
  const head = await clock.run(connectHead(transport, clock));
  return { clock, instrument: transport.instrument, head };
}

describe('the practice head', () => {
  it('introduces itself', async () => {
    const { head } = await connected();
    expect(head.identity).toEqual({
      model: 'PRACTICE-8',
      serial: 'PRACTICE',
      firmware: '1.0.0',
      protocol: '1.0',
    });
    expect(head.kind).toBe('bands');
    expect(head.checksum).toBe(true);
    expect(head.channels.map((c) => c.name)).toEqual(['F1', 'F2', 'F3', 'F4', 'F5', 'F6', 'F7', 'F8', 'CLR']);
    expect(head.channels[0]).toMatchObject({ centreNm: 415, fwhmNm: 26 });
    expect(head.settings).toMatchObject({ gain: 64, averages: 1, passes: 2, fullScale: 65_500 });
  });
  it('gives raw counts and the settings they were taken with', async () => {
    const { head, clock } = await connected({ traits: STILL_TRAITS });
    const light = await clock.run(head.read());
    expect(light).toMatchObject({ frame: 1, gain: 64, apertureS: 0.18209, lamp: true, settling: false });
    const dark = await clock.run(head.readDark());
    expect(dark).toMatchObject({ frame: 2, lamp: false });
    expect(Math.max(...dark.counts)).toBeLessThan(Math.min(...light.counts) / 100);
  });
});
