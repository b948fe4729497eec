/** A picture as families with recipes: chosen, cropped by keyboard, printed. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BenchUnderTest, benchUnderTest } from './bench-under-test.ts';
import { faultsOf, printed } from './printed.ts';
import { fourQuarters } from './made-picture.ts';
import { measuredPalette } from './measured-palette.ts';

let bench: BenchUnderTest;
let page: Page;

beforeAll(async () => {
  bench = await benchUnderTest();
  await measuredPalette(bench.address);
  page = await bench.page();
  await page.goto(`${bench.address}/#/study`);
});
afterAll(() => bench.close());

// A family's row and not the two names under its patches, which are list items too.
const families = () => page.locator('tl-family-list li:has(h3)');

describe('Study', () => {
  it('refuses a file that is no picture in one sentence', async () => {
    const file = { name: 'notes.png', mimeType: 'image/png', buffer: Buffer.from('not a picture') };
    await page.locator('input[type=file]').setInputFiles(file);
    await page.getByText('notes.png could not be opened as a picture.').waitFor();
  });

  it('parts a picture into families, dark before light, each with a recipe', async () => {
    const buffer = await fourQuarters(page);
    await page
      .locator('input[type=file]')
      .setInputFiles({ name: 'quarters.png', mimeType: 'image/png', buffer });
    await page.getByText('2', { exact: true }).first().click();
    await expect.poll(() => families().count(), { timeout: 20_000 }).toBe(4);
    await families().first().locator('dd').first().waitFor({ timeout: 30_000 });
    const shares = await families().locator('h3 span').allInnerTexts();
    expect(shares.every((s) => s.includes('25 %'))).toBe(true);
    await expect
      .poll(() => page.locator('tl-study-picture [role="img"]').getAttribute('aria-label'))
      .toContain('4 families');
    // What the scale cannot weigh is not asked for: 0.05 g is its smallest pour.
    const pours = (await families().locator('dd').allInnerTexts()).map((g) => Number.parseFloat(g));
    expect(Math.min(...pours)).toBeGreaterThanOrEqual(0.05);
    await page.mouse.move(0, 0);
    await bench.picture(page, 'study-quarters-1440', true);
  });

  it('crops by keyboard and parts again', async () => {
    const box = page.locator('tl-crop-box .box');
    await box.focus();
    for (let i = 0; i < 60; i++) await page.keyboard.press('Shift+ArrowUp');
    await expect.poll(() => box.getAttribute('aria-label')).toMatch(/200 by (1\d|[2-7]\d) pixels/);
    // Only the upper, dark half is left: one cool and one warm.
    await expect.poll(() => families().count(), { timeout: 20_000 }).toBe(2);
    await page.getByText(/Crop: \d+ by/).click();
    await page.getByRole('button', { name: 'Whole picture' }).click();
    await expect.poll(() => families().count(), { timeout: 20_000 }).toBe(4);
  });

  it('adds up the paint, and doubles it for twice the film', async () => {
    const grams = async (): Promise<number> =>
      (await page.locator('tl-paint-list .figure').allInnerTexts()).reduce(
        (s, g) => s + Number.parseFloat(g),
        0,
      );
    await page.locator('tl-paint-list .figure').first().waitFor({ timeout: 30_000 });
    const thin = await grams();
    // Thick enough that no family needs more than its area to be weighed.
    await page.getByLabel('Film as painted').fill('500');
    await expect.poll(grams, { timeout: 20_000 }).toBeGreaterThan(2 * thin);
    const before = await grams();
    await page.getByLabel('Film as painted').fill('1000');
    // A pour may come out a tenth over what is needed, before and after: 2 within a fifth.
    await expect
      .poll(async () => Math.abs((await grams()) / before - 2), { timeout: 20_000 })
      .toBeLessThan(0.2);
  });

  it('pours afresh for a coarser scale, with nothing under its smallest pour, and remembers it', async () => {
    const fields = page.locator('tl-scale-fields');
    await fields.getByLabel('Smallest pour').fill('0,4');
    const least = async (): Promise<number> =>
      Math.min(...(await families().locator('dd').allInnerTexts()).map((g) => Number.parseFloat(g)));
    await expect.poll(least, { timeout: 20_000 }).toBeGreaterThanOrEqual(0.4);
    expect(await page.evaluate(() => localStorage.getItem('tintladder.scale'))).toContain(
      '"smallestPour":0.4',
    );
  });

  it('prints a sheet for the easel', async () => {
    await page.getByRole('link', { name: /Sheet for the easel/ }).click();
    await page.locator('tl-family-table tbody tr').first().waitFor();
    await expect.poll(() => page.locator('tl-family-table tbody tr').count()).toBe(4);
    const sheets = await printed(page, 'print-study-sheet');
    expect(
      faultsOf(sheets, {
        pages: 1,
        words: [
          'Paint for the whole study',
          /value \d\.\d, (warm|cool)/,
          'Printed colour is not paint colour',
        ],
      }),
    ).toEqual([]);
  });
});
