/**
 * The ladder: hands free with the practice head, undone and redone, a rung read again, a reading sent back by hand,
 * numbers typed in and a file taken as equals of the head, bad numbers refused in a sentence.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { benchUnderTest, type BenchUnderTest } from './bench-under-test.ts';
import { faultsOf, printed } from './printed.ts';
import { enter } from './by-keyboard.ts';
import { readLadder, setPracticeHead } from './practice-ladder.ts';

let bench: BenchUnderTest;
let page: Page;

const SPECTRUM = Array.from({ length: 36 }, (_, i) => `${380 + 10 * i};0,${100 + i}`).join('\n');

beforeAll(async () => {
  bench = await benchUnderTest();
  page = await bench.page();
  await page.goto(bench.address);
  await enter(page, /^Take the demo rack/);
  await page.getByText('Demo: invented paints').waitFor();
});
afterAll(() => bench.close());

const far = (): Promise<string | null> => page.locator('tl-ladder-session .far').textContent();

describe('the weighing plan', () => {
  it('shows grams for each rung, and asks nothing before it shows them', async () => {
    await page.goto(`${bench.address}/#/ladder`);
    await enter(page, /^Demo red earth/);
    const pours = page.locator('.pours li');
    await pours.nth(3).waitFor();
    await expect.poll(() => pours.nth(1).textContent()).toMatch(/\d\.\d\d g/);
  });

  it('changes with the scale', async () => {
    await enter(page, /^Change the plan/);
    await page.getByRole('radio', { name: '0.1 g' }).press('Space');
    await page
      .locator('.pours .grams')
      .filter({ hasText: /^\d\.\d g$/ })
      .first()
      .waitFor();
    await page.getByRole('radio', { name: '0.01 g' }).press('Space');
    await page
      .locator('.pours .grams')
      .filter({ hasText: /^\d\.\d\d g$/ })
      .first()
      .waitFor();
  });

  it('prints as one sheet of either paper with a box for each drawdown', async () => {
    const sheets = await printed(page, 'print-ladder-card');
    expect(
      faultsOf(sheets, {
        pages: 1,
        words: ['Ladder card', 'Weighing plan', 'safety data sheet', 'Pull here'],
      }),
    ).toEqual([]);
  });
});

describe('numbers from elsewhere, as equals of the head', () => {
  it('starts without a head, and weighs first', async () => {
    await enter(page, /^Start this ladder/);
    await page.locator('tl-ladder-session').waitFor();
    while (/^\s*Weigh/.test((await far()) ?? '')) {
      const before = await far();
      await enter(page, /^Weighed as planned/);
      await page.locator('.far').filter({ hasNotText: before!.trim() }).waitFor();
    }
  });

  it('asks for the geometry while no reading of this palette says it', async () => {
    await page.getByRole('radio', { name: 'Typed in' }).press('Space');
    await page.getByLabel('Wavelengths and numbers').fill('400 0,1\n410 lots');
    await page.getByRole('button', { name: /^Take it as a reading/ }).press('Enter');
    await page.getByText('Say the geometry of the instrument first').waitFor();
    await page.getByLabel('Geometry of the instrument').selectOption('d/8 specular included');
  });

  it('refuses a line it cannot read, in one sentence, and takes nothing', async () => {
    await page.getByRole('button', { name: /^Take it as a reading/ }).press('Enter');
    await page.getByText('Line 2 reads “410 lots”; 2 numbers are needed there').waitFor();
    await expect.poll(() => page.getByText('None yet.').count()).toBe(1);
  });

  it('takes a spectrum with decimal commas', async () => {
    await page.getByLabel('Wavelengths and numbers').fill(SPECTRUM);
    await page.getByRole('button', { name: /^Take it as a reading/ }).press('Enter');
    await page.getByText(/^Kept/).first().waitFor();
    await expect.poll(() => page.getByLabel('Wavelengths and numbers').inputValue()).toBe('');
  });

  it('takes a file, and says what is wrong with one that is none', async () => {
    await page.getByRole('radio', { name: 'A file' }).press('Space');
    const file = page.getByLabel(/File with the reading/);
    await file.setInputFiles({
      name: 'shopping.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from('milk,eggs\n'),
    });
    await page.getByRole('button', { name: /^Take the file/ }).press('Enter');
    await page.locator('tl-ladder-session tl-notice[kind=error]').waitFor();
    bench.errors.length = 0; // the refusal is an answer of status 4xx, which the browser logs
    // Dark enough that it could be either: only a person knows how its numbers run.
    const dark = `id,${Array.from({ length: 36 }, (_, i) => 380 + 10 * i).join(',')}\nred,${Array.from({ length: 36 }, (_, i) => 0.5 + i / 100).join(',')}\n`;
    await page.getByLabel('Numbers run').selectOption('per cent');
    await page.getByLabel('Geometry of the instrument').selectOption('d/8 specular included');
    await file.setInputFiles({ name: 'dark.csv', mimeType: 'text/csv', buffer: Buffer.from(dark) });
    await page.getByRole('button', { name: /^Take the file/ }).press('Enter');
    await page.locator('tl-readings-list tbody tr').nth(1).waitFor();
    await page
      .locator('tl-readings-list tbody tr')
      .nth(1)
      .getByText(/value 0\./)
      .waitFor();
    await page.getByLabel('Numbers run').selectOption('fraction');
    const csv = `id,${Array.from({ length: 36 }, (_, i) => 380 + 10 * i).join(',')}\nred,${Array.from({ length: 36 }, (_, i) => 0.1 + i / 50).join(',')}\n`;
    await file.setInputFiles({ name: 'red.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) });
    await page.getByRole('button', { name: /^Take the file/ }).press('Enter');
    // The first reading was typed in, so "Kept" stands there already: the third row is what says that the file is in.
    await page.locator('tl-readings-list tbody tr').nth(2).waitFor();
  });
});

describe('hands free with the head', () => {
  it('reads with any key, takes back with Backspace, and does it again', async () => {
    await setPracticeHead(page);
    await page.goto(`${bench.address}/#/ladder`);
    await enter(page, /^Demo yellow earth/);
    await enter(page, /^Start this ladder/);
    await readLadder(page, 2);
    await page.getByText(/^Kept\. 2 of 3/).waitFor();
    await page.keyboard.press('Backspace');
    await page.getByRole('status').filter({ hasText: 'Undone.' }).waitFor();
    await page.getByText('1 of 3 read').first().waitFor();
    await enter(page, /^Redo/);
    await page.getByText('2 of 3 read').first().waitFor();
  });

  it('leaves a key alone that is typed into a field or held with Control', async () => {
    const kept = await page.getByText('2 of 3 read').count();
    await page.keyboard.press('Control+b');
    await page.keyboard.press('ArrowDown');
    await page.waitForTimeout(600);
    await expect.poll(() => page.getByText('2 of 3 read').count()).toBe(kept);
  });

  it('lets the painter send a reading back and keep it after all', async () => {
    await page.getByRole('button', { name: 'Send it back' }).first().press('Enter');
    await page.getByText('1 of 3 read').first().waitFor();
    await page.getByRole('button', { name: 'Keep it' }).first().press('Enter');
    await page.getByText('2 of 3 read').first().waitFor();
  });

  it('reads a full rung again when it is chosen', async () => {
    await readLadder(page, 1);
    await enter(page, /^masstone/);
    await page.getByRole('button', { name: /^Read the masstone again/ }).waitFor();
    await page.keyboard.press('b');
    await page.getByText(/masstone is full/).waitFor();
    await expect.poll(() => page.locator('tl-readings-list tbody tr').count()).toBe(4);
    await bench.picture(page, 'ladder-again', true);
  });

  it('says at once what became of a reading, in letters for two metres', async () => {
    const size = await page
      .locator('tl-ladder-session .verdict')
      .evaluate((e) => Number.parseFloat(getComputedStyle(e).fontSize));
    expect(size).toBeGreaterThanOrEqual(44);
  });

  it("reads with the head's own button what stands in the far letters, and says so", async () => {
    await page.goto(`${bench.address}/#/ladder`);
    await enter(page, /^Demo deep blue/);
    await enter(page, /^Start this ladder/);
    for (let n = 0; n < 10 && !/Head on/.test((await far()) ?? ''); n++) {
      const before = (await far())!.trim();
      await page.keyboard.press('Enter'); // weighs as planned
      await page.locator('tl-ladder-session .far').filter({ hasNotText: before }).waitFor();
    }
    const kept = page.locator('tl-ladder-session .verdict').filter({ hasText: /^Kept\. 1 of 3/ });
    // The page offers the button once the bench has said that a press counts for what the far letters say.
    await page.locator('tl-ladder-session .step tl-next[hint*="own button"]').waitFor();
    await page.evaluate(() =>
      fetch('/api/instrument/button/press', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: '{}',
      }),
    );
    await kept.waitFor();
    await page.getByText('1 of 3 read').first().waitFor();
    await expect.poll(() => page.locator('tl-readings-list tbody tr').count()).toBe(1);
  });

  it('works at the width of a phone, with the next step above the thumb', async () => {
    const phone = await bench.page({ width: 390 });
    await phone.goto(page.url());
    const next = phone.locator('tl-ladder-session .step tl-next');
    await next.waitFor();
    const box = (await next.boundingBox())!;
    expect(box.y + box.height).toBeGreaterThan(844 - 100);
    expect(box.width).toBe(390);
    await bench.picture(phone, 'ladder-390');
  });
});

describe('in German', () => {
  it('says what the bench found and why it took nothing', async () => {
    const german = await bench.page({ language: 'de' });
    await german.goto(page.url());
    await german.getByRole('radio', { name: 'Eingetippt' }).press('Space');
    await german.getByLabel('Geometrie des Geräts').selectOption('d/8 specular included');
    await german.getByLabel('Wellenlängen und Zahlen').fill('400;0,1\n410;-0,5\n420;0,1');
    await german.getByRole('button', { name: /^Als Messung nehmen/ }).press('Enter');
    await german.getByText('-0,5 bei 410 nm ist ein Reflexionsgrad von -0,5; erlaubt ist').waitFor();
    // A gain at which the white tile fills the sensor.
    const set = await german.evaluate(() =>
      fetch('/api/instrument/settings', {
        method: 'PUT',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ gain: 512, apertureMs: 500 }),
      }).then((answer) => answer.status),
    );
    expect(set).toBe(200);
    await german.goto(`${bench.address}/#/bench`);
    await enter(german, /^Weißkachel messen/);
    await german
      .getByText(
        /Zu viel Licht in .+; jeder Kanal muss unter der Vollaussteuerung bleiben|: voll \(\d+ Zählwerte\)/,
      )
      .first()
      .waitFor();
    bench.errors.length = 0; // both refusals are answers of status 4xx, which the browser logs
  });
});
