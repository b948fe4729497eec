/** A profile handed on, taken in after a look, and compared with another. */
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BenchUnderTest, benchUnderTest } from './bench-under-test.ts';
import { measuredPalette } from './measured-palette.ts';

let bench: BenchUnderTest;
let page: Page;
let file: Buffer;

beforeAll(async () => {
  bench = await benchUnderTest();
  await measuredPalette(bench.address);
  page = await bench.page();
  await page.goto(`${bench.address}/#/profile`);
});
afterAll(() => bench.close());

describe('Profile', () => {
  it('exports JSON that the published schema accepts', async () => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: /JSON: all of it/ }).click(),
    ]);
    file = readFileSync(await download.path());
    const ajv = new Ajv2020({ strict: false });
    addFormats.default(ajv);
    const schema = JSON.parse(
      readFileSync(new URL('../../docs/palette-profile.schema.json', import.meta.url), 'utf8'),
    ) as object;
    const valid = ajv.validate(schema, JSON.parse(file.toString()));
    expect(ajv.errorsText()).toBe('No errors');
    expect(valid).toBe(true);
  });

  it('looks into a file before it keeps anything', async () => {
    await page.locator('input[type=file]').setInputFiles({
      name: 'borrowed.json',
      mimeType: 'application/json',
      buffer: file,
    });
    await page.getByRole('button', { name: /Take it in as a palette of its own/ }).waitFor();
    await page.getByText('It is a palette profile: constants').waitFor();
    const before = await page.evaluate(() =>
      fetch('/api/palettes').then((a) => a.json() as Promise<unknown[]>),
    );
    expect(before).toHaveLength(1);
    await bench.picture(page, 'profile-preview-1440', true);
  });

  it('takes it in as a palette of its own and makes it current', async () => {
    await page.getByRole('button', { name: /Take it in as a palette of its own/ }).click();
    await page.getByText(/is taken in and is the current palette/).waitFor();
    const after = await page.evaluate(() =>
      fetch('/api/palettes').then((a) => a.json() as Promise<unknown[]>),
    );
    expect(after).toHaveLength(2);
    await page.getByText('from a file').first().waitFor();
  });

  it('refuses a file that is neither, in the words of the bench', async () => {
    await page
      .locator('input[type=file]')
      .setInputFiles({ name: 'list.json', mimeType: 'application/json', buffer: Buffer.from('[1, 2, 3]') });
    await page.locator('tl-profile-import tl-notice[kind=error]').waitFor();
    // The refusal is an answer of 4xx, which the browser logs by itself.
    bench.errors.splice(0, bench.errors.length, ...bench.errors.filter((e) => !/status of 4\d\d/.test(e)));
  });

  it('looks at what a tube measured again changes, by keyboard, then puts it in its place', async () => {
    // The palette taken in holds constants only; the one measured here has its readings.
    // Nobody looks meanwhile: the page would ask for the constants of a palette that has none yet, and log the 404.
    await page.goto(`${bench.address}/#/rack`);
    await page.getByRole('heading', { name: 'Rack', exact: true }).waitFor();
    await measuredPalette(bench.address);
    await page.goto(`${bench.address}/#/profile`);
    await page.locator('tl-tube-replace').getByLabel('The old tube').waitFor();
    // The history comes with its own answer, and holds the fit just made.
    await page.locator('.history li').first().waitFor();
    const before = await page.locator('.history li').count();
    const replace = page.locator('tl-tube-replace');
    await replace.getByLabel('The new tube').selectOption({ label: 'the same tube, measured again' });
    await replace.getByRole('button', { name: 'What would change?' }).focus();
    await page.keyboard.press('Enter');
    const replaced = page.locator('tl-replaced');
    // Two fits on a busy machine.
    await replaced.waitFor({ timeout: 90_000 });
    // The very readings the profile was fitted to: the same strength, within its doubt.
    const strength = Number.parseFloat(await replaced.locator('.figure').first().innerText());
    expect(Math.abs(strength - 100)).toBeLessThan(10);
    await expect.poll(() => page.locator('.history li').count()).toBe(before);
    await bench.picture(page, 'profile-replace-1440', true);
    await replace.getByRole('button', { name: 'Put it in its place' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('.history li').count(), { timeout: 90_000 }).toBe(before + 1);
  }, 240_000);

  it('asks for the file where the new tube is to come from one', async () => {
    const replace = page.locator('tl-tube-replace');
    await replace.getByLabel('The new tube').selectOption({ label: 'from a file' });
    await replace.getByRole('button', { name: 'What would change?' }).click();
    await replace.getByText('Choose the file with the short ladder first.').waitFor();
  });
});
