/** From a wanted colour to grams on a card, and a pile that came out wrong. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type BenchUnderTest, benchUnderTest } from './bench-under-test.ts';
import { faultsOf, printed } from './printed.ts';
import { enter, tabTo } from './by-keyboard.ts';
import { measuredPalette } from './measured-palette.ts';

let bench: BenchUnderTest;
let page: Page;
/** The Lab of a mix of this palette, by the server's own prediction. */
let reachable: { L: number; a: number; b: number };

beforeAll(async () => {
  bench = await benchUnderTest();
  const tube = await measuredPalette(bench.address);
  reachable = await labOfMix(tube);
  page = await bench.page();
  await page.goto(`${bench.address}/#/mixing`);
  await page.locator('tl-pull-slider').first().waitFor();
});
afterAll(() => bench.close());

async function labOfMix(tube: string): Promise<typeof reachable> {
  const tubes = (await (await fetch(`${bench.address}/api/tubes`)).json()) as {
    id: string;
    role: string | null;
  }[];
  const white = tubes.find((t) => t.role === 'white')!.id;
  const answer = await fetch(`${bench.address}/api/predict`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ masses: { [tube]: 1, [white]: 6 } }),
  });
  return ((await answer.json()) as { colour: { Lab: typeof reachable } }).colour.Lab;
}

const total = async (): Promise<number> =>
  Number.parseFloat(
    await page
      .locator('tl-tube-pulls')
      .getByText(/in all/)
      .innerText(),
  );

describe('Mixing', () => {
  it('shows the pile as a tube is pulled, by keyboard', async () => {
    const slider = page.locator('tl-pull-slider input').first();
    await slider.focus();
    for (let i = 0; i < 5; i++) await page.keyboard.press('PageUp');
    await page.getByText(/value [\d.]+ to [\d.]+, lean/).waitFor();
    await expect.poll(() => total()).toBeGreaterThan(0);
    await expect.poll(() => slider.getAttribute('aria-valuetext')).toMatch(/g$/);
  });

  it('takes grams with a decimal comma', async () => {
    const field = page.locator('tl-tube-pulls tl-field').nth(1).locator('input');
    const before = await total();
    await field.fill('2,5');
    await expect.poll(total).toBeCloseTo(before + 2.5, 2);
  });

  it('finds a mix of the palette again when its Lab is typed, nearest first', async () => {
    await enter(page, /^Name the colour you want/);
    const form = page.locator('tl-wanted-form');
    await form.getByText('CIELAB', { exact: true }).click();
    for (const [letter, value] of [
      ['L*', reachable.L],
      ['a*', reachable.a],
      ['b*', reachable.b],
    ] as const) {
      await form.getByLabel(letter, { exact: true }).first().fill(value.toFixed(2).replace('.', ','));
    }
    await tabTo(page, /^Want this colour/);
    await page.keyboard.press('Enter');
    const found = page.locator('tl-recipe-list li');
    await found.first().waitFor({ timeout: 30_000 });
    const difference = await found
      .first()
      .getByText(/colour difference/)
      .innerText();
    // Grams of 0.01 g in 20 g, and a Lab typed to two decimals.
    expect(Number(/([\d.]+) \(/.exec(difference)![1])).toBeLessThanOrEqual(0.3);
    await page.mouse.move(0, 0);
    await bench.picture(page, 'mixing-recipes-1440', true);
  });

  it('gives grams the scale can weigh, and puts them on the pulls', async () => {
    const recipe = page.locator('tl-recipe-list li').first();
    const grams = await recipe.locator('dd').allInnerTexts();
    await recipe.getByRole('button', { name: 'Put on the sliders' }).click();
    const sum = grams.reduce((all, g) => all + Number.parseFloat(g), 0);
    await expect.poll(total).toBeCloseTo(sum, 1);
  });

  it('says what to add to a pile that came out wrong, and takes nothing out', async () => {
    const panel = page.locator('tl-addition-panel');
    await panel.getByText('Type a reading').click();
    await panel.getByText('CIELAB', { exact: false }).first().click();
    for (const [letter, value] of [
      ['L*', reachable.L - 4],
      ['a*', reachable.a + 1],
      ['b*', reachable.b - 3],
    ] as const) {
      await panel.getByLabel(letter, { exact: true }).fill(value.toFixed(1));
    }
    await panel.getByRole('button', { name: 'What to add?' }).last().click();
    const addition = panel.locator('li > div > b').first();
    await addition.waitFor({ timeout: 30_000 });
    await expect.poll(() => addition.innerText()).toMatch(/^\d+\.\d\d g /);
    const before = await total();
    await panel.getByRole('button', { name: 'Put it in' }).first().click();
    await expect.poll(total).toBeGreaterThan(before);
  });

  it('says what makes the pile one step darker, and puts it in', async () => {
    const panel = page.locator('tl-nudge-panel');
    await panel.getByRole('button', { name: 'darker' }).click();
    const says = panel.locator('.says b');
    await says.waitFor({ timeout: 20_000 });
    const added = Number.parseFloat(await says.innerText());
    expect(added).toBeGreaterThan(0);
    const before = await total();
    await panel.getByRole('button', { name: 'Put it in' }).click();
    await expect.poll(total).toBeGreaterThan(before);
  });

  it('lays the pile as a film over a ground, and hides more the thicker it is', async () => {
    const panel = page.locator('tl-film-panel');
    const hides = panel.locator('label span').filter({ hasText: /hides/ });
    await expect.poll(() => hides.count()).toBe(5);
    const says = await hides.allInnerTexts();
    const shares = says.map((text) => Number(/hides (\d+)/.exec(text)![1]));
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    await panel.locator('select').selectOption('toned');
    await expect.poll(() => hides.count()).toBe(0);
    // A ground is seen through a film only, so a film is laid.
    await expect.poll(() => panel.locator('.films input:checked').count()).toBe(1);
    await panel.locator('select').selectOption('card');
    await panel.getByRole('radio').last().check({ force: true });
  });

  it('counts the pile out in whole parts, and shows what two tubes do to each other', async () => {
    const parts = page.locator('tl-parts-panel');
    await parts.getByRole('button', { name: 'Count it out' }).click();
    await parts.locator('li b').first().waitFor({ timeout: 20_000 });
    expect(await parts.locator('li b').first().innerText()).toMatch(/^\d+ /);
    await expect.poll(() => page.locator('tl-mud-panel li').count()).toBe(11);
    await page
      .locator('tl-mud-panel')
      .getByText(/mix cleanly|dull each other|kill each other|greys/)
      .waitFor();
  });

  it('prints a recipe card that carries the recipe in its own address', async () => {
    const link = page.locator('tl-recipe-list').getByRole('link', { name: 'Recipe card' }).first();
    const href = (await link.getAttribute('href'))!;
    const alone = await bench.page();
    await alone.goto(`${bench.address}/${href}`);
    const card = alone.locator('tl-recipe-card');
    await card.getByText(/Pour in this order/).waitFor();
    // The order of addition is worked out beside the page: the pours come a moment after their heading.
    await card.locator('.grams').first().waitFor();
    await expect.poll(() => card.locator('.grams').count()).toBeGreaterThan(0);
    const sheets = await printed(alone, 'print-recipe-card');
    expect(
      faultsOf(sheets, {
        pages: 1,
        words: ['Recipe card', 'Pour in this order', /\d g/, 'Printed colour is not paint colour'],
      }),
    ).toEqual([]);
  });

  it('refuses a card without a recipe in one sentence', async () => {
    await page.goto(`${bench.address}/#/mixing/card?m=nonsense`);
    await page.getByText('There is no recipe on this card. Go back and choose one.').waitFor();
  });
});
