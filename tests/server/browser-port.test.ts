/** A head on the cable of the computer that shows the page: the driver is the bench's own, the page hands lines on. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ServerEvent } from '../../server/api/events.ts';
import { PracticeHead } from '../../src/device/practice/practice-head.ts';
import { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import { TestBench } from './bench-client.ts';

const bench = new TestBench();
const instrument = new PracticeInstrument(systemClock, { variant: 'bands-8', seed: 5 });
let page: PageWithHead;

/** What a page does with the port it holds; the head on it is the practice head. */
class PageWithHead {
  readonly head = new PracticeHead(instrument, 'USB port 1209:0001');
  connection = '';
  /** Lines that came back out of order would be refused by the driver; each waits for the one before. */
  #sent: Promise<unknown> = Promise.resolve();

  async announce(): Promise<string> {
    await this.head.open();
    const { connection } = await bench.get('announceBrowserPort', { body: { name: this.head.name } });
    this.connection = connection;
    this.head.onLine = (line) => void this.#hear({ lines: [line] });
    bench.started.bench.events.listen((event: ServerEvent) => {
      if (event.type !== 'port' || event.connection !== connection) return;
      if (event.do === 'send') void this.head.write(event.line).catch(() => undefined);
    });
    return connection;
  }

  unplug(): Promise<unknown> {
    this.head.unplug();
    return this.#hear({ gone: true });
  }

  #hear(body: { lines?: string[]; gone?: boolean }): Promise<unknown> {
    const params = { connection: this.connection };
    return (this.#sent = this.#sent.then(() => bench.ask('hearBrowserPort', { params, body })));
  }
}

beforeAll(async () => {
  await bench.open();
}, 60_000);
afterAll(() => bench.close());

describe('a head on a browser’s port', () => {
  it('is refused where no page holds that port', async () => {
    const body = { transport: 'browser' as const, connection: 'nothing' };
    expect((await bench.refusal('connectInstrument', { body })).detail).toMatch(/choose it again/);
    const params = { connection: 'nothing' };
    expect((await bench.refusal('hearBrowserPort', { params, body: {} })).status).toBe(404);
  });

  it('is connected, set and read as any other, checksums and all', { timeout: 30_000 }, async () => {
    page = new PageWithHead();
    const connection = await page.announce();
    const connected = await bench.get('connectInstrument', { body: { transport: 'browser', connection } });
    expect(connected).toMatchObject({ transport: 'browser', port: 'USB port 1209:0001', checksum: true });
    await bench.get('setInstrument', { body: { gain: 64, apertureMs: 50 } });
    await bench.get('readWhiteTile', { body: { reflectance: 0.88 } });
    const reading = await bench.get('readOnce');
    expect(reading.accepted).toBe(true);
    for (const R of reading.reflectance!) expect(R).toBeCloseTo(0.88, 1);
  });

  it(
    'is lost when its cable is out, and found again on the page’s next port',
    { timeout: 30_000 },
    async () => {
      await page.unplug();
      await expect.poll(async () => (await bench.get('getInstrument')).state).toBe('lost');
      page = new PageWithHead();
      await page.announce();
      await expect
        .poll(async () => (await bench.get('getInstrument')).state, { timeout: 10_000 })
        .toBe('ready');
      expect((await bench.get('getInstrument')).next).toMatch(/lamp may be cold; read the white tile/);
    },
  );

  it('is let go, and the page is told', async () => {
    const told = new Promise<ServerEvent>((resolve) => {
      bench.started.bench.events.listen((e) => {
        if (e.type === 'port' && e.do === 'close') resolve(e);
      });
    });
    await bench.get('disconnectInstrument');
    expect(await told).toMatchObject({ connection: page.connection });
  });
});
