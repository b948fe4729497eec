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
/** A tube whose ladder lies open. */
let begun: string;

beforeAll(async () => {
  bench = await benchUnderTest();
  tube = await measuredPalette(bench.address);
  begun = await beginLadder(bench.address, tube);
});
afterAll(() => bench.close());

/** Each place, and what no place shows by itself: a tube's weighing plan, a ladder being read, the sheet for paper. */
const PLACES = [...SCREENS, 'weighing plan', 'open ladder', 'palette sheet'];
function hashOf(place: string): string {
  if (place === 'weighing plan') return `#/ladder/${tube}`;
  if (place === 'open ladder') return `#/ladder/${begun}`;
  return place === 'palette sheet' ? '#/constants/sheet' : `#/${place}`;
}

async function beginLadder(address: string, but: string): Promise<string> {
  const tubes = (await (await fetch(`${address}/api/tubes`)).json()) as { id: string; role: string | null }[];
  const { id } = tubes.find((t) => t.role === null && t.id !== but)!;
  const answer = await fetch(`${address}/api/ladders`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ tubeId: id }),
  });
  if (!answer.ok) throw new Error(await answer.text());
  return id;
}

async function show(page: Page, hash: string): Promise<void> {
  await page.goto(`${bench.address}/${hash}`);
  const screen = /#\/(\w+)/.exec(hash)?.[1] ?? 'rack';
  await page.locator(`tl-${screen}-screen tl-page h1`).first().waitFor();
  await page.evaluate(filled);
}

/**
 * The events stay open, so the network is never idle: a screen is filled when none of its pages waits and nothing more
 * is added to it. One that works on for long (a search in a worker) is looked at while it works.
 */
async function filled(): Promise<void> {
  let before = -1;
  let still = 0;
  for (let turn = 0; turn < 150 && still < 3; turn++) {
    let size = 0;
    let busy = false;
    const roots: ParentNode[] = [document];
    for (let root = roots.pop(); root; root = roots.pop()) {
      for (const element of root.querySelectorAll('*')) {
        size += 1 + element.childNodes.length;
        if (element.shadowRoot) roots.push(element.shadowRoot);
        if (element.localName === 'tl-page' && (element as HTMLElement & { waiting: boolean }).waiting)
          busy = true;
        if (element.localName === 'tl-progress' && turn < 40) busy = true;
      }
    }
    still = size === before && !busy ? still + 1 : 0;
    before = size;
    await new Promise((resolve) => setTimeout(resolve, 60));
  }
}

async function violations(page: Page): Promise<string[]> {
  const { violations: found } = await new AxeBuilder({ page }).analyze();
  return found.flatMap((v) =>
    v.nodes.map((n) => `${v.id} (${v.impact}): ${n.target.join(' ')} ${n.html.slice(0, 160)}`),
  );
}

describe.each(['middle', 'light', 'dark'] as const)('in the %s theme', (theme) => {
  let page: Page;
  beforeAll(async () => {
    page = await bench.page({ theme });
  });
  it.each(PLACES)('axe finds nothing on %s', async (place) => {
    await show(page, hashOf(place));
    await bench.picture(page, `${place.replace(' ', '-')}-${theme}-1440`, true);
    expect(await violations(page)).toEqual([]);
  });
});

describe('at the width of a phone', () => {
  let page: Page;
  beforeAll(async () => {
    page = await bench.page({ width: 390 });
  });
  it.each(PLACES)('%s is no wider than 390 px, and axe finds nothing', async (place) => {
    await show(page, hashOf(place));
    await bench.picture(page, `${place.replace(' ', '-')}-middle-390`, true);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    expect(await violations(page)).toEqual([]);
  });
});

describe('at 200 % zoom of a 1280 px screen, 640 CSS px (WCAG 2.2, 1.4.10)', () => {
  let page: Page;
  beforeAll(async () => {
    page = await bench.page({ width: 640, height: 450 });
  });
  it.each(PLACES)('nothing of %s is cut off', async (place) => {
    await show(page, hashOf(place));
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(640);
  });
});

describe('right to left', () => {
  let page: Page;
  beforeAll(async () => {
    page = await bench.page({ width: 1024 });
  });
  it.each(PLACES)('%s turns without anything leaving the page', async (place) => {
    await show(page, hashOf(place));
    await page.evaluate(() => (document.documentElement.dir = 'rtl'));
    await bench.picture(page, `${place.replace(' ', '-')}-rtl-1024`);
    const [width, railAt] = await page.evaluate(() => [
      document.documentElement.scrollWidth,
      document.querySelector('tl-app')!.shadowRoot!.querySelector('.rail')!.getBoundingClientRect().left,
    ]);
    expect(width).toBeLessThanOrEqual(1024);
    expect(railAt).toBeGreaterThan(500);
  });
});

describe('in German', () => {
  let page: Page;
  beforeAll(async () => {
    page = await bench.page({ width: 390, language: 'de' });
  });
  it.each(PLACES)('%s fits a phone', async (place) => {
    await show(page, hashOf(place));
    await bench.picture(page, `${place.replace(' ', '-')}-de-390`, true);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  });
});

describe('the slip with this screen’s settings', () => {
  it.each(['middle', 'dark'] as const)('axe finds nothing on it in the %s theme', async (theme) => {
    const page = await bench.page({ theme });
    await show(page, '#/rack');
    await page.getByRole('button', { name: 'This screen' }).click();
    await page.getByRole('dialog').waitFor();
    await bench.picture(page, `slip-${theme}-1440`);
    expect(await violations(page)).toEqual([]);
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
