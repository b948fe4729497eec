/** The rack: what a tube is, what is known of it, cautions, and two tubes of one pigment side by side. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { benchUnderTest, type BenchUnderTest } from './bench-under-test.ts';
import { enter, tabTo } from './by-keyboard.ts';

let bench: BenchUnderTest;
let page: Page;

beforeAll(async () => {
  bench = await benchUnderTest();
  page = await bench.page();
  await page.goto(bench.address);
});
afterAll(() => bench.close());

describe('an empty rack', () => {
  it('says what to do, and offers invented paints marked as such', async () => {
    await page.getByRole('heading', { name: 'An empty rack' }).waitFor();
    await expect.poll(() => page.getByRole('button', { name: /Put in your white/ }).count()).toBe(1);
    await enter(page, /^Take the demo rack/);
    await page.getByText('Demo: invented paints').waitFor();
    await page.getByRole('link', { name: /^Measure Demo white/ }).waitFor();
  });

  it('leads the newcomer to the next step of the first walk', async () => {
    const now = page.locator('tl-first-walk .here a');
    await expect.poll(() => now.getAttribute('href')).toBe('#/bench');
  });
});

describe('a tube', () => {
  it('is refused without a name, in one sentence, with the focus on it', async () => {
    await enter(page, /^Put in a tube/);
    await enter(page, /^Put it in the rack/);
    await page.getByText('This is needed.').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'hidden' });
  });

  it('is refused with a density that is none, and what was typed stays', async () => {
    await enter(page, /^Put in a tube/);
    await tabTo(page, /Your own name for it/);
    await page.keyboard.type('Grandmother’s red');
    await enter(page, /^More about it/);
    await tabTo(page, /^Density/);
    await page.keyboard.type('heavy');
    await enter(page, /^Put it in the rack/);
    await page.getByText('“heavy” is not a number.').waitFor();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('99');
    await enter(page, /^Put it in the rack/);
    await page.getByText('99 g/ml is too large; the most is 30 g/ml.').waitFor();
    await expect.poll(() => page.getByLabel('Your own name for it').inputValue()).toBe('Grandmother’s red');
    await page.getByLabel('Density').fill('1,9');
  });

  it('takes its pigment codes as they stand on the label, and warns of the toxic ones', async () => {
    await page.getByLabel('Pigment codes on the tube').fill('pr 108, pb29');
    await enter(page, /^Put it in the rack/);
    await page.getByText('Grandmother’s red stands in the rack.').waitFor();
    const tube = page.locator('.tube', { hasText: 'Grandmother’s red' });
    await tube.getByText('PR108 PB29').first().waitFor();
    const caution = tube.locator('tl-notice[kind=caution]');
    await expect.poll(() => caution.textContent()).toMatch(/cadmium/i);
    await expect.poll(() => caution.textContent()).toMatch(/safety data sheet/i);
  });

  it('is put away and taken out again', async () => {
    await enter(page, /^Write on it: Grandmother’s red/);
    await enter(page, /^(Put it away|Remove it)/);
    await page.getByText(/Grandmother’s red was (put away|removed)\./).waitFor();
  });
});

describe('two tubes of one pigment', () => {
  it('stand side by side, and say that both must be measured first', async () => {
    await enter(page, /^Put in a tube/);
    await page.getByLabel('Your own name for it').fill('The other blue');
    await page.getByLabel('Pigment codes on the tube').fill('PB29');
    await enter(page, /^Put it in the rack/);
    await page.getByRole('heading', { name: /Same pigment, PB29/ }).waitFor();
    await page.getByText('Measure both to see them side by side.').waitFor();
    await bench.picture(page, 'rack-same-pigment', true);
  });
});
