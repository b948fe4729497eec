/** The bench: the practice instrument connected, set, watched and let go; what happens when the server goes away. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { benchUnderTest, type BenchUnderTest } from './bench-under-test.ts';
import { SerialTransport } from '../../src/device/serial/serial-transport.ts';
import { simulatedHead } from '../device/simulated-head/simulated-head.ts';
import { enter } from './by-keyboard.ts';

let bench: BenchUnderTest;
let page: Page;

beforeAll(async () => {
  bench = await benchUnderTest();
  page = await bench.page();
  await page.goto(`${bench.address}/#/bench`);
});
afterAll(() => bench.close());

describe('without a head', () => {
  it('offers three equal ways: a port, the practice instrument, numbers from elsewhere', async () => {
    await page.getByRole('heading', { name: 'Where the head is plugged in' }).waitFor();
    await page.getByRole('heading', { name: 'Practice instrument' }).waitFor();
    await page.getByRole('heading', { name: 'Numbers from elsewhere' }).waitFor();
  });
});

describe('the practice instrument', () => {
  it('connects, is set on white and trap with Enter alone, and leads to the ladder', async () => {
    await enter(page, /^Start the practice instrument/);
    await page.getByText(/answers\.$/).waitFor();
    await enter(page, /^Read the white tile/);
    await page.getByRole('heading', { name: 'White tile: good' }).waitFor();
    await enter(page, /^Read the black trap/);
    await page.getByRole('link', { name: /^Go to the ladder/ }).waitFor();
  });

  it('draws what it counts, a bar for each channel', async () => {
    // On the trap there is nothing to draw: lay it on the tile again.
    await enter(page, /^Read the white tile/);
    await page.getByText('White tile: good.').waitFor();
    await enter(page, /^Read what lies under the head/);
    const bars = page.locator('tl-live-counts rect');
    await bars.first().waitFor();
    await expect.poll(() => bars.count()).toBeGreaterThanOrEqual(8);
    const heights = await bars.evaluateAll((all) => all.map((bar) => Number(bar.getAttribute('height'))));
    expect(Math.max(...heights)).toBeGreaterThan(10);
  });

  it('draws a live reading within two frames of its event', async () => {
    // Frames from the arrival of an event to the change of the drawing, counted in the page.
    const frames = await page.evaluate(async () => {
      const deep = (root: ParentNode, selector: string): Element | undefined => {
        for (const element of root.querySelectorAll('*')) {
          if (element.matches(selector)) return element;
          const inside = element.shadowRoot && deep(element.shadowRoot, selector);
          if (inside) return inside;
        }
        return undefined;
      };
      const live = deep(document, 'tl-live-counts') as HTMLElement & { draw(reading: unknown): void };
      const bar = live.shadowRoot!.querySelector('rect')!;
      const bars = live.shadowRoot!.querySelectorAll('rect').length;
      const before = bar.getAttribute('height');
      const channels = Array.from({ length: bars }, (_, i) => ({ name: `${i}`, centre: 400 + i, fwhm: 10 }));
      live.draw({ channels, counts: [], reflectance: channels.map(() => 0.123), findings: [] });
      let count = 0;
      while (bar.getAttribute('height') === before && count < 60) {
        await new Promise((resolve) => requestAnimationFrame(resolve));
        count++;
      }
      return count;
    });
    console.log(`frames from a reading's arrival to its drawing: ${frames}`);
    expect(frames).toBeLessThanOrEqual(2);
  });

  it('refuses a time it cannot keep, in one sentence', async () => {
    await enter(page, /^About this head/);
    await page.getByLabel('Time').fill('9999999');
    await enter(page, /^Set both/);
    await page.getByText(/9999999 ms is too large; the most is/).waitFor();
  });

  it('is tested, its tile entered and its check tile charted, on one screen without a violation', async () => {
    for (const fold of [/^The white tile’s own values/, /^Test the head/, /^What this head has shown/]) {
      await page.locator('summary').filter({ hasText: fold }).press('Enter');
    }
    await page.getByLabel('Name of the tile').fill('Glazed tile');
    await page.getByLabel('Reflectance', { exact: true }).fill('0.86');
    await page.getByRole('button', { name: 'Keep this tile' }).press('Enter');
    await page.getByRole('heading', { name: 'Glazed tile: in use' }).waitFor();
    await page.getByText('This head sees 0.860.').waitFor();

    await page.getByRole('button', { name: /Read at 0.0 mm|Read at 0 mm/ }).press('Enter');
    await page.locator('tl-head-tests tl-notice').getByText('Put a shim of 0.1 mm').waitFor();
    await page.getByRole('button', { name: /Read at 0.2 mm/ }).press('Enter');
    await page.getByRole('heading', { name: /^Lifted a little: (not )?passed/ }).waitFor();

    await page.getByText(/need 5 sessions; there are/).waitFor();
    for (let n = 1; n <= 6; n += 1) {
      const before = page.waitForResponse((r) => r.url().endsWith('/api/instrument/record'));
      await page.getByRole('button', { name: 'Read the check tile' }).press('Enter');
      await before;
    }
    await page.locator('tl-control-chart').nth(1).locator('svg[role=img], svg').first().waitFor();
    // Every fold lies open, and each of them has something in it.
    for (const width of [1440, 768, 390]) {
      await page.setViewportSize({ width, height: width < 600 ? 844 : 900 });
      const { violations } = await new AxeBuilder({ page }).analyze();
      const said = violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`);
      expect(said, `${width} px`).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      await bench.picture(page, `bench-open-${width}`, true);
    }
    await page.setViewportSize({ width: 1440, height: 900 });
    await bench.picture(page, 'bench-1440', true);
  });

  it('is let go', async () => {
    await enter(page, /^Let it go/);
    await page.getByText('The head was let go.').waitFor();
    await page.getByRole('button', { name: /Start the practice instrument/ }).waitFor();
  });
});

/** Stands in for the browser's own serial ports: what is written goes to `serialWrite`, what comes is pushed. */
function fakeSerial(): void {
  interface Fake {
    controller?: ReadableStreamDefaultController<Uint8Array>;
    push?: (text: string) => void;
    lose?: () => void;
    back?: () => void;
  }
  const page = globalThis as unknown as { fake: Fake; serialWrite: (text: string) => Promise<void> };
  const fake: Fake = {};
  page.fake = fake;
  const port: {
    readable: ReadableStream<Uint8Array> | null;
    writable: WritableStream<Uint8Array> | null;
    [key: string]: unknown;
  } = {
    readable: null,
    writable: null,
    getInfo: () => ({ usbVendorId: 0x1209, usbProductId: 1 }),
    open: async () => {
      port.readable = new ReadableStream({ start: (c) => void (fake.controller = c) });
      port.writable = new WritableStream({
        write: (bytes) => page.serialWrite(new TextDecoder().decode(bytes)),
      });
    },
    close: async () => {
      port.readable = null;
      port.writable = null;
    },
  };
  const serial = Object.assign(new EventTarget(), { requestPort: async () => port });
  // What comes while the cable is out reaches nobody.
  fake.push = (text) => {
    if (port.readable) fake.controller?.enqueue(new TextEncoder().encode(text));
  };
  fake.lose = () => {
    const { controller } = fake;
    port.readable = null;
    port.writable = null;
    controller?.error(new DOMException('The device has been lost.', 'NetworkError'));
  };
  fake.back = () => {
    const event = new Event('connect');
    Object.defineProperty(event, 'target', { value: port });
    serial.dispatchEvent(event);
  };
  Object.defineProperty(navigator, 'serial', { value: serial });
}

describe('a head on the cable of the computer that shows the page', () => {
  it('is chosen in the browser, checked by the bench, read, lost and found again', async () => {
    const terminal = await simulatedHead();
    const wire = new SerialTransport(terminal.path);
    const own = await bench.page();
    await own.exposeFunction('serialWrite', async (text: string) => {
      for (const line of text.split('\n')) if (line) await wire.write(line);
    });
    await own.addInitScript(fakeSerial);
    const fake = (what: 'push' | 'lose' | 'back', text = ''): Promise<void> =>
      own.evaluate(
        ([name, given]) =>
          (globalThis as unknown as { fake: Record<string, (t: string) => void> }).fake[name!]!(given!),
        [what, text],
      );
    // One after the other: a line that overtook another would be refused.
    let pushed = Promise.resolve();
    wire.onLine = (line) => void (pushed = pushed.then(() => fake('push', `${line}\n`)));
    await wire.open();
    await own.goto(`${bench.address}/#/bench`);
    await enter(own, /^Choose a port of this computer/);
    await own.getByText('HEAD-8 answers.').waitFor();
    await enter(own, /^Read the white tile/);
    await own.getByRole('heading', { name: 'White tile: good' }).waitFor();
    await enter(own, /^Read what lies under the head/);
    await own.locator('tl-live-counts rect').nth(7).waitFor();

    await fake('lose');
    await own.getByText(/connection to USB port 1209:0001 was lost/).waitFor();
    await fake('back');
    await own
      .getByText(/lamp may be cold; read the white tile/)
      .first()
      .waitFor();
    await enter(own, /^About this head/);
    await enter(own, /^Let it go/);
    await own.getByRole('button', { name: /Start the practice instrument/ }).waitFor();
    await pushed;
    await wire.close();
    await terminal.stop();
  });
});
