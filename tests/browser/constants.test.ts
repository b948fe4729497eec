/** What a fit left, tube by tube, and on paper. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BenchUnderTest, benchUnderTest } from './bench-under-test.ts';
import { faultsOf, printed } from './printed.ts';
import { measuredPalette } from './measured-palette.ts';

let bench: BenchUnderTest;
let page: Page;

beforeAll(async () => {
  bench = await benchUnderTest();
  page = await bench.page();
});
afterAll(() => bench.close());

describe('Constants', () => {
  it('sends whoever has none to the ladder', async () => {
    await page.goto(`${bench.address}/#/constants`);
    await page.getByRole('heading', { name: 'No tube has constants yet' }).waitFor();
    await expect
      .poll(() => page.getByRole('link', { name: /Go to the ladder/ }).getAttribute('href'))
      .toBe('#/ladder');
  });

  it('shows the rungs of a tube, predicted over measured, once there is a fit', async () => {
    const tube = await measuredPalette(bench.address);
    await page.goto(`${bench.address}/#/constants/${tube}`);
    const rungs = page.locator('tl-ladder-pulls [role="img"]');
    await rungs.first().waitFor();
    await page.locator('tl-reflectance-chart svg').waitFor();
    await expect.poll(() => rungs.count()).toBeGreaterThanOrEqual(4);
    await expect
      .poll(() => rungs.first().getAttribute('aria-label'))
      .toMatch(/predicted value [\d.]+, (warm|cool|neutral), chroma \d+; measured value/);
    await bench.picture(page, 'constants-tube-1440', true);
  });

  it('says what trust rests on, in words and numbers', async () => {
    const trust = page.locator('tl-tube-view');
    await trust.getByText('spectral', { exact: true }).waitFor();
    await expect.poll(() => trust.getByText(/Mean of the rungs/).count()).toBe(1);
    await trust.getByText('Mixtures hold within').waitFor();
    await trust.getByText('Most of that doubt').waitFor();
    await trust
      .getByText(/^mean of \d+; worst [\d.]+; \d+ % inside their region$/)
      .waitFor({ timeout: 30_000 });
    // Rung by rung: off, from the others, readings, scatter, weighing.
    await expect.poll(() => trust.locator('tl-tube-evidence tbody tr').count()).toBeGreaterThanOrEqual(4);
  });

  it('says hiding, undertone and half strength with their ranges, at the thickness that is asked for', async () => {
    const films = page.locator('tl-tube-films');
    await films.getByText("Contrast ratio at 2.0 × the white's").waitFor();
    await films.getByText(/Hides \(0\.98\) at/).waitFor();
    await films.getByText(/^parts of white take it half way to the white, between 1:/).waitFor();
    await films.getByLabel('Film thickness for the contrast ratio').fill('8');
    await films.getByText("Contrast ratio at 8.0 × the white's").waitFor();
  });

  it('says what to measure next, what it buys and where', async () => {
    await page
      .locator('tl-tube-view')
      .getByText(/(halves|takes .*) (the doubt )?.*\(from [\d.]+ to [\d.]+ CIEDE2000\)\.$/)
      .first()
      .waitFor();
  });

  it('shows films over a card, with hiding that grows with thickness', async () => {
    await page
      .locator('tl-tube-films')
      .getByText(/hiding 0\.\d\d/)
      .first()
      .waitFor({ timeout: 30_000 });
    const hiding = await page
      .locator('tl-tube-films .films')
      .getByText(/hiding [\d.]+/)
      .allInnerTexts();
    const numbers = hiding.map((h) => Number(/hiding ([\d.]+)/.exec(h)![1]));
    expect(numbers.length).toBeGreaterThanOrEqual(4);
    expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
  });

  it('goes to another tube from the band of tubes', async () => {
    const other = page.locator('tl-tube-band a:not([aria-current])').last();
    const name = (await other.locator('b').innerText()).trim();
    await other.click();
    await page.locator('tl-tube-view').getByRole('heading', { level: 2, name, exact: true }).waitFor();
  });

  it('prints every tube on the palette sheet', async () => {
    await page.goto(`${bench.address}/#/constants/sheet`);
    await page.locator('tl-palette-sheet tl-constants-chart svg').first().waitFor();
    const tubes = await page.locator('tl-palette-sheet article').count();
    expect(tubes).toBeGreaterThan(2);
    await expect.poll(() => page.locator('tl-palette-sheet tl-constants-chart').count()).toBe(tubes);
    const labels = await page.locator('tl-palette-sheet article h2').allInnerTexts();
    const sheets = await printed(page, 'print-palette-sheet');
    expect(
      faultsOf(sheets, {
        pages: Math.ceil(tubes / 3),
        words: [...labels, 'wavelength, nm', 'undertone', 'Printed colour is not paint colour'],
      }),
    ).toEqual([]);
  });
});
