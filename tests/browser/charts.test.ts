/** Charts with the keyboard, the pointer, and as files; on the Constants and Limits screens of a measured palette. */
import { readFileSync } from 'node:fs';
import type { Download, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BenchUnderTest, benchUnderTest } from './bench-under-test.ts';
import { measuredPalette } from './measured-palette.ts';

let bench: BenchUnderTest;
let page: Page;
let curves: Locator;

beforeAll(async () => {
  bench = await benchUnderTest();
  const tube = await measuredPalette(bench.address);
  page = await bench.page();
  await page.goto(`${bench.address}/#/constants/${tube}`);
  curves = page.locator('tl-constants-chart');
  await curves.locator('svg').waitFor();
});
afterAll(() => bench.close());

const says = (chart: Locator): Promise<string> => chart.locator('output').innerText();

async function saved(chart: Locator, kind: 'SVG' | 'PNG' | 'CSV'): Promise<{ name: string; bytes: Buffer }> {
  const [download] = (await Promise.all([
    page.waitForEvent('download'),
    chart.getByRole('button', { name: kind, exact: true }).click(),
  ])) as [Download, void];
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

describe('a chart by keyboard', () => {
  it('reads the first wavelength at Home and the last at End, K and S with their ranges', async () => {
    await curves.locator('.plot').focus();
    await page.keyboard.press('Home');
    await expect.poll(() => says(curves)).toMatch(/^380 nm: K [\d.]+ \([\d.]+ – [\d.]+\), S [\d.]+ \(/);
    await page.keyboard.press('End');
    await expect.poll(() => says(curves)).toMatch(/^730 nm/);
  });

  it('goes one wavelength with an arrow key and stops at the end', async () => {
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => says(curves)).toMatch(/^720 nm/);
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => says(curves)).toMatch(/^730 nm/);
  });

  it('speaks through a polite live region and lets go with Escape', async () => {
    await expect.poll(() => curves.locator('output').getAttribute('aria-live')).toBe('polite');
    await page.keyboard.press('Escape');
    await expect.poll(() => says(curves)).toMatch(/arrow keys/);
  });
});

describe('a chart by pointer', () => {
  it('says the value under it', async () => {
    const plot = curves.locator('.plot');
    const box = (await plot.boundingBox())!;
    await plot.hover({ position: { x: box.width / 2, y: box.height / 2 } });
    await expect.poll(() => says(curves)).toMatch(/^5\d0 nm/);
  });
});

describe('the numbers behind a chart', () => {
  it('stand in a table, one row a wavelength', async () => {
    await curves.getByText('The numbers').click();
    await expect.poll(() => curves.locator('tbody tr').count()).toBe(36);
    await expect.poll(() => curves.locator('thead th').first().innerText()).toBe('wavelength, nm');
  });

  it('are saved as CSV with plain numbers', async () => {
    const { name, bytes } = await saved(curves, 'CSV');
    expect(name).toBe('absorption-k-and-scattering-s.csv');
    const lines = bytes.toString().trim().split(/\r?\n/);
    expect(lines).toHaveLength(37);
    expect(lines[1]!.split(',').map(Number).every(Number.isFinite)).toBe(true);
    expect(lines[1]).toMatch(/^380,/);
  });

  it('are saved as a drawing that stands alone: dark ink on white, no cursor', async () => {
    const { bytes } = await saved(curves, 'SVG');
    const text = bytes.toString();
    expect(text.startsWith('<svg ')).toBe(true);
    expect(text.includes('xmlns="http://www.w3.org/2000/svg"')).toBe(true);
    expect(text.includes('fill="#ffffff"')).toBe(true);
    // Away from the page it still says what it is, and what its axes count.
    expect(text).toContain('<title>Absorption K and scattering S</title>');
    expect(text).toContain('wavelength, nm');
    expect(text.includes('class="cursor"')).toBe(false);
  });

  it('are saved as a picture at twice the size, with an edge around it', async () => {
    const { bytes } = await saved(curves, 'PNG');
    expect(bytes.subarray(1, 4).toString()).toBe('PNG');
    const width = await curves.locator('svg').getAttribute('width');
    // Width in the IHDR chunk of ISO/IEC 15948.
    expect(bytes.readUInt32BE(16)).toBe(2 * (Number(width) + 24));
  });
});

describe('the turntable', () => {
  it('turns with the arrow keys and goes from tube to tube with the page keys', async () => {
    await page.goto(`${bench.address}/#/limits`);
    const table = page.locator('tl-turntable');
    await table.locator('[data-name]').first().waitFor({ timeout: 60_000 });
    const place = (): Promise<number[]> =>
      table
        .locator('[data-name]')
        .evaluateAll((all) => all.map((c) => Number(c.getAttribute('cx'))).sort((p, q) => p - q));
    const before = await place();
    await table.locator('.plot').focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => place()).not.toEqual(before);
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => place()).toEqual(before);
    await page.keyboard.press('PageDown');
    await expect.poll(() => says(table)).toMatch(/: L\* [\d.]+, a\* /);
  });

  it('turns under a drag', async () => {
    const table = page.locator('tl-turntable');
    const box = (await table.locator('.plot').boundingBox())!;
    const x = (): Promise<string | null> => table.locator('[data-name]').nth(1).getAttribute('cx');
    const before = await x();
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 + 90, box.y + box.height / 2, { steps: 4 });
    await page.mouse.up();
    await expect.poll(() => x()).not.toBe(before);
  });
});
