/**
 * What holds on every screen: reached by its address, nothing wider than the page at 390 px and at 200 % zoom, no
 * violation found by axe-core (WCAG 2.x A and AA, and its best practices) in any theme, no console error.
 */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { benchUnderTest, type BenchUnderTest } from './bench-under-test.ts';
import { measuredPalette } from './measured-palette.ts';

const SCREENS = ['rack', 'bench', 'ladder', 'constants', 'checks', 'profile', 'mixing', 'limits', 'study'];
let bench: BenchUnderTest;
let tube: string;

beforeAll(async () => {
  bench = await benchUnderTest();
  tube = await measuredPalette(bench.address);
});
afterAll(() => bench.close());

const addresses = (): [string, string][] => [
  ...SCREENS.map((s): [string, string] => [s, `#/${s}`]),
  ['ladder-plan', `#/ladder/${tube}`],
];

async function show(page: Page, hash: string): Promise<void> {
  await page.goto(`${bench.address}/${hash}`);
  await page.locator('h1').first().waitFor();
  // The events stay open, so the network is never idle; half a second is what any screen may take to fill.
  await page.waitForTimeout(500);
}

async function violations(page: Page): Promise<string[]> {
  const { violations: found } = await new AxeBuilder({ page }).analyze();
  return found.flatMap((v) =>
    v.nodes.map((n) => `${v.id} (${v.impact}): ${n.target.join(' ')} ${n.html.slice(0, 160)}`),
  );
}

describe.each(['middle', 'light', 'dark'] as const)('in the %s theme', (theme) => {
  it('axe finds nothing on any screen', async () => {
    const page = await bench.page({ theme });
    const found: string[] = [];
    for (const [name, hash] of addresses()) {
      await show(page, hash);
      await bench.picture(page, `${name}-${theme}-1440`, true);
      found.push(...(await violations(page)).map((v) => `${name}: ${v}`));
    }
    expect(found).toEqual([]);
  });
});

describe('at the width of a phone', () => {
  it('no screen is wider than 390 px, and axe finds nothing', async () => {
    const page = await bench.page({ width: 390 });
    const wide: string[] = [];
    const found: string[] = [];
    for (const [name, hash] of addresses()) {
      await show(page, hash);
      await bench.picture(page, `${name}-middle-390`, true);
      const width = await page.evaluate(() => document.documentElement.scrollWidth);
      if (width > 390) wide.push(`${name}: ${width}`);
      found.push(...(await violations(page)).map((v) => `${name}: ${v}`));
    }
    expect(wide).toEqual([]);
    expect(found).toEqual([]);
  });

  it('at 200 % zoom of a 1280 px screen (WCAG 2.2, 1.4.10: 640 CSS px) nothing is cut off', async () => {
    const page = await bench.page({ width: 640, height: 450 });
    const wide: string[] = [];
    for (const [name, hash] of addresses()) {
      await show(page, hash);
      const width = await page.evaluate(() => document.documentElement.scrollWidth);
      if (width > 640) wide.push(`${name}: ${width}`);
    }
    expect(wide).toEqual([]);
  });
});

describe('right to left', () => {
  it('turns without anything leaving the page', async () => {
    const page = await bench.page({ width: 1024 });
    const wide: string[] = [];
    for (const [name, hash] of addresses()) {
      await show(page, hash);
      await page.evaluate(() => (document.documentElement.dir = 'rtl'));
      await bench.picture(page, `${name}-rtl-1024`);
      const [width, railAt] = await page.evaluate(() => [
        document.documentElement.scrollWidth,
        document.querySelector('tl-app')!.shadowRoot!.querySelector('.rail')!.getBoundingClientRect().left,
      ]);
      if (width! > 1024 || railAt! < 500) wide.push(`${name}: ${width}, rail at ${railAt}`);
    }
    expect(wide).toEqual([]);
  });
});

describe('the frame', () => {
  it('changes theme, language and lamp, and keeps them', async () => {
    const page = await bench.page();
    await show(page, '#/rack');
    await page.evaluate(() => localStorage.clear());
    await page.getByRole('button', { name: 'This screen' }).click();
    await page.getByRole('radio', { name: 'Dark' }).press('Space');
    await page.getByRole('radio', { name: 'Deutsch' }).press('Space');
    await page.getByRole('heading', { name: 'Regal', exact: true }).waitFor();
    const kept = await page.evaluate(() => [
      document.documentElement.dataset['theme'],
      document.documentElement.lang,
      localStorage.getItem('tintladder.theme'),
      localStorage.getItem('tintladder.language'),
    ]);
    expect(kept).toEqual(['dark', 'de', 'dark', 'de']);
  });

  it('says so when there is no such place, and when a screen is left behind', async () => {
    const page = await bench.page();
    await page.goto(`${bench.address}/#/attic`);
    await page.getByText('There is no screen called “attic”').waitFor();
    await page.goto(`${bench.address}/#/rack`);
    await page.getByRole('heading', { name: 'Rack', exact: true }).waitFor();
    expect(await page.title()).toBe('Rack · Tintladder');
  });

  it('keeps still for those who ask for less motion', async () => {
    const page = await bench.page({ reducedMotion: true });
    await show(page, '#/rack');
    const quick = await page.evaluate(() =>
      getComputedStyle(document.documentElement).getPropertyValue('--quick').trim(),
    );
    expect(quick).toMatch(/^0m?s$/);
  });
});
