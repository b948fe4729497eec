/** What a palette can reach, with and without a tube, and its value string on paper. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BenchUnderTest, benchUnderTest } from './bench-under-test.ts';
import { faultsOf, printed } from './printed.ts';
import { measuredPalette } from './measured-palette.ts';

let bench: BenchUnderTest;
let page: Page;

beforeAll(async () => {
  bench = await benchUnderTest();
  await measuredPalette(bench.address);
  page = await bench.page();
  await page.goto(`${bench.address}/#/limits`);
  await page.locator('tl-limits-view').waitFor({ timeout: 60_000 });
});
afterAll(() => bench.close());

const volume = async (): Promise<number> =>
  Number((await page.locator('tl-limits-view tl-figures .figure').first().innerText()).replaceAll(/\s/g, ''));

describe('Limits', () => {
  it('shows a darkest dark below a lightest light', async () => {
    const names = await page
      .locator('tl-limits-view .ends tl-drawdown [role="img"]')
      .evaluateAll((all) =>
        all.map((svg) => Number(/value ([\d.]+)/.exec(svg.getAttribute('aria-label') ?? '')?.[1])),
      );
    expect(names[0]).toBeLessThan(names[1]!);
  });

  it('slices reachable colour by value', async () => {
    const slice = page.locator('tl-value-slice');
    await page.getByRole('group', { name: 'Value of the slice' }).getByText('7', { exact: true }).click();
    await slice.getByText('Slice at value 7.0').waitFor();
    await expect.poll(() => slice.locator('svg circle').count()).toBeGreaterThan(8);
    await page.mouse.move(0, 0);
    await bench.picture(page, 'limits-1440', true);
  });

  it('shrinks when a tube is left out, and says what putting it back would add', async () => {
    const before = await volume();
    const boxes = page.getByRole('group', { name: 'Tubes in use' }).getByRole('checkbox');
    await boxes.nth(1).uncheck();
    const next = page.getByRole('button', { name: /would add most/ });
    await next.waitFor({ timeout: 60_000 });
    await expect.poll(() => volume()).toBeLessThan(before);
    await next.click();
    await expect.poll(volume, { timeout: 60_000 }).toBe(before);
  });

  it('lays a value string of as many steps as asked, from dark to light', async () => {
    await page.locator('tl-string-settings').getByText('7', { exact: true }).click();
    const steps = page.getByRole('list', { name: 'Value string' }).locator('> li');
    await expect.poll(() => steps.count()).toBe(7);
    const values = await steps.locator('.says > b').allInnerTexts();
    expect(values.map(Number)).toEqual(values.map(Number).toSorted((a, b) => a - b));
  });

  it('ends the string with highlights, all in grams the scale can weigh', async () => {
    const string = page.locator('tl-value-string');
    await string
      .getByRole('list', { name: 'Highlights' })
      .locator('> li')
      .first()
      .waitFor({ timeout: 20_000 });
    for (const text of await string.locator('ul li span:last-child').allInnerTexts()) {
      expect(text).toMatch(/^\d+\.\d\d g$/);
      expect(Number.parseFloat(text)).toBeGreaterThan(0);
    }
  });

  it('says whether a colour is inside by mixing it', async () => {
    const panel = page.locator('tl-inside-panel');
    await panel.getByLabel('Chroma', { exact: true }).fill('110');
    await panel.getByRole('button', { name: 'Is it inside?' }).click();
    await panel.getByText(/^Outside: the nearest mix is off by/).waitFor({ timeout: 20_000 });
    await panel.getByLabel('Chroma', { exact: true }).fill('2');
    await panel.getByRole('button', { name: 'Is it inside?' }).click();
    await panel.getByText('Inside: these tubes mix it.').waitFor({ timeout: 20_000 });
  });

  it('prints the value string', async () => {
    await page.goto(`${bench.address}/#/limits/string`);
    await page.locator('tl-value-string svg').first().waitFor();
    const sheets = await printed(page, 'print-value-string');
    expect(
      faultsOf(sheets, {
        pages: 1,
        words: ['Value string', 'Highlights', /\d\.\d\d g/, 'Printed colour is not paint colour'],
      }),
    ).toEqual([]);
  });

  it('keeps the highlights whole where a longer string takes a second page', async () => {
    const german = await bench.page({ language: 'de', theme: 'dark' });
    await german.goto(`${bench.address}/#/limits/string`);
    await german.locator('tl-value-string ol[aria-label="Lichter"] svg').first().waitFor();
    const sheets = await printed(german, 'print-value-string-german');
    expect(faultsOf(sheets, { pages: 2, words: ['Tonwertreihe', /\d,\d\d g/] })).toEqual([]);
    for (const { pages } of sheets) expect(pages[1]!.words).toContain('Lichter');
  });
});
