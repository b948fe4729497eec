/** A head that loses its power for a moment while the cable stays in. */
import { describe, expect, it } from 'vitest';
import type { DeviceFault } from '../../src/device/fault.ts';
import { connectHead } from '../../src/device/head/connect.ts';
import type { HeadReading } from '../../src/device/head/reading.ts';
import { practiceHead } from '../../src/device/practice/practice-head.ts';
import { SimulatedClock } from './simulated-clock.ts';

async function connected() {
  const clock = new SimulatedClock();
  const transport = practiceHead(clock);
  const head = await clock.run(connectHead(transport, clock, { settings: { gain: 32 } }));
  return { clock, transport, instrument: transport.instrument, head };
}

describe('a restart', () => {
  it('while idle is noticed by the heartbeat; checksums, settings and the armed button are back', async () => {
    const { clock, instrument, head } = await connected();
    await clock.run(head.armButton());
    let restarts = 0;
    head.on('restarted', () => restarts++);
    instrument.powerOn();
    expect(instrument.settings.gain).toBe(64);
    await clock.pass(5000);
    expect(restarts).toBe(1);
    expect(instrument.desk.checksum).toBe(true);
    expect(instrument.settings.gain).toBe(32);
    expect(instrument.waitingForButton).toBe(true);
    const pressed = new Promise<HeadReading>((resolve) => head.on('press', resolve));
    void instrument.press();
    expect(await clock.run(pressed)).toMatchObject({ frame: 1, gain: 32 });
  });

  it('as another head than before is let go', async () => {
    const { clock, instrument, head } = await connected();
    const down = new Promise<DeviceFault>((resolve) => head.on('down', resolve));
    (instrument as { serial: string }).serial = 'ANOTHER';
    instrument.powerOn();
    const reading = clock.run(head.read()).catch((error: unknown) => error);
    expect((await clock.run(down)).kind).toBe('other-head');
    expect(await reading).toMatchObject({ kind: 'other-head' });
    expect(head.isConnected).toBe(false);
  });

  it('into a head without checksums is let go: nothing unchecked is taken from then on', async () => {
    const { clock, transport, instrument, head } = await connected();
    (instrument as { checksums: boolean }).checksums = false;
    instrument.powerOn();
    await expect(clock.run(head.read())).rejects.toMatchObject({ kind: 'no-crc' });
    expect(transport.isOpen).toBe(false);
    await expect(clock.run(head.read())).rejects.toMatchObject({ kind: 'disconnected' });
  });
});
