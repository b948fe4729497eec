/** The bench: the practice instrument connected, set, watched and let go; what happens when the server goes away. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { benchUnderTest, type BenchUnderTest } from './bench-under-test.ts';
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

  it('is let go', async () => {
    await enter(page, /^Let it go/);
    await page.getByText('The head was let go.').waitFor();
    await page.getByRole('button', { name: /Start the practice instrument/ }).waitFor();
  });
});
