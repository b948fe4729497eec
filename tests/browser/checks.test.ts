/** A mixture that was never fitted: written down, read by typing, held against its prediction. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BenchUnderTest, benchUnderTest } from './bench-under-test.ts';
import { enter, tabTo } from './by-keyboard.ts';
import { measuredPalette } from './measured-palette.ts';

let bench: BenchUnderTest;
let page: Page;

beforeAll(async () => {
  bench = await benchUnderTest();
  await measuredPalette(bench.address);
  page = await bench.page();
  await page.goto(`${bench.address}/#/checks`);
});
afterAll(() => bench.close());

describe('Checks', () => {
  it('holds the checks of an imported set against their predictions', async () => {
    const split = page.getByText(/Measured, against predicted:/);
    await split.first().waitFor();
    await expect.poll(() => page.locator('tl-check-card').count()).toBeGreaterThanOrEqual(2);
    await expect
      .poll(() => page.getByText(/colour difference \d+\.\d \(CIEDE2000\)/).count())
      .toBeGreaterThanOrEqual(2);
    await page.locator('tl-figures').getByText('Mean difference').waitFor();
  });

  it('proposes the mixture that would teach most', async () => {
    const next = page.getByRole('button', { name: /Mix something never fitted/ });
    await next.getByText(/Most would be learned from \d+ g/).waitFor({ timeout: 30_000 });
  });

  it('takes a new one down by keyboard, with its prediction beside it', async () => {
    await enter(page, /^Mix something never fitted/);
    await page.getByText(/good to about/).waitFor();
    await tabTo(page, /^Name$/);
    await page.keyboard.type('Grey for the wall');
    await enter(page, /^Write it down/);
    await page.getByRole('heading', { name: 'Grey for the wall' }).waitFor();
    await bench.picture(page, 'checks-written', true);
  });

  it('says how far a typed reading lies from the prediction', async () => {
    const card = page.locator('tl-check-card', { hasText: 'Grey for the wall' });
    await card.getByText('Type the reading in').click();
    // A reading of another geometry is no check of this palette; the set was read at 45/0.
    await card.locator('tl-typed-entry select').first().selectOption('45/0');
    await card.getByText('CIELAB', { exact: false }).first().click();
    for (const [letter, value] of [
      ['L*', '50'],
      ['a*', '2'],
      ['b*', '-3'],
    ] as const) {
      await card.getByLabel(letter, { exact: true }).fill(value);
    }
    await card.getByRole('button', { name: 'Take this reading' }).first().click();
    await card.getByText(/Measured, against predicted/).waitFor({ timeout: 60_000 });
  });

  it('puts it away again', async () => {
    const card = page.locator('tl-check-card', { hasText: 'Grey for the wall' });
    const away = card.getByRole('button', { name: 'Put it away' });
    if (!(await away.isVisible())) await card.getByText('Read it again, or put it away').click();
    await away.click();
    await page.getByRole('heading', { name: 'Grey for the wall' }).waitFor({ state: 'detached' });
  });
});
