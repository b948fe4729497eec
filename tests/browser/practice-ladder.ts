/** A whole ladder on the practice instrument, by any key: for every test that needs a measured tube. */
import type { Page } from 'playwright-core';
import { enter, tabTo } from './by-keyboard.ts';

/** Puts a tube in the rack from its open dialog; what it holds is chosen by typing the first letters of a practice paint. */
export async function writeTube(page: Page, label: string, paint: string): Promise<void> {
  await tabTo(page, /Your own name for it/);
  await page.keyboard.type(label);
  await tabTo(page, /What the practice instrument finds in it/);
  await page.keyboard.type(paint);
  await enter(page, /^Put it in the rack/);
  await page.getByText(`${label} stands in the rack.`).waitFor();
}

/** The bench, from the rail: practice instrument, white tile, black trap. */
export async function setPracticeHead(page: Page): Promise<void> {
  await enter(page, /^Bench$/);
  // The first walk on the Rack names the same step: it must be gone before the Bench's own is looked for.
  await page.getByRole('heading', { name: 'Bench', exact: true }).waitFor();
  await enter(page, /^Start the practice instrument/);
  await enter(page, /^Read the white tile/);
  await enter(page, /^Read the black trap/);
  await page.getByRole('link', { name: /Go to the ladder/ }).waitFor();
}

const NEXT = '.step tl-next, .step tl-progress';

/** What the ladder asks for now, once nothing is on its way. */
async function settled(page: Page): Promise<string> {
  await page
    .locator('tl-ladder-session .step tl-next:not([busy]), tl-ladder-session .step tl-progress')
    .waitFor();
  return (await page.locator(`tl-ladder-session ${NEXT}`).first().textContent({ timeout: 5000 })) ?? '';
}

/**
 * From a started ladder to its last reading: Enter weighs as planned, any other key reads or sets the head.
 * @param readings stops after so many
 * @returns milliseconds from each key to the words that told what became of the reading
 */
export async function readLadder(page: Page, readings = Infinity): Promise<number[]> {
  const took: number[] = [];
  for (let i = 0; i < 60; i++) {
    await settled(page);
    const far = (await page.locator('tl-ladder-session .far').textContent()) ?? '';
    if (/Fit the constants|This ladder is done|Measure a little more/.test(far)) return took;
    const weighing = /Weigh/.test(far);
    const before = Date.now();
    await page.keyboard.press(weighing ? 'Enter' : 'b');
    await page
      .locator('tl-ladder-session .step tl-next[busy]')
      .waitFor({ timeout: 400 })
      .catch(() => undefined);
    await settled(page);
    if (/Head on/.test(far)) took.push(Date.now() - before);
    if (took.length >= readings) return took;
  }
  throw new Error('Sixty presses did not finish the ladder.');
}
