/**
 * The pages: what a first visit loads, how long a screen takes to stand, and how long after the head's answer the
 * verdict is on the page. Printed, never asserted.
 *
 *   npm run bench:web
 */
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { benchUnderTest } from '../tests/browser/bench-under-test.ts';
import { enter } from '../tests/browser/by-keyboard.ts';
import { measuredPalette } from '../tests/browser/measured-palette.ts';
import { readLadder, setPracticeHead } from '../tests/browser/practice-ladder.ts';

const SCREENS = ['bench', 'ladder', 'constants', 'checks', 'profile', 'mixing', 'limits', 'study', 'rack'];
const KB = 1000;
/** Kinds that come after the page stands. */
const LATER: ReadonlySet<string> = new Set(['worker', 'chart']);

const bench = await benchUnderTest();
await measuredPalette(bench.address);

/** Of a load without any input, as browsers define them: FCP, LCP and total blocking time, ms; CLS, unitless. */
interface Loaded {
  readonly firstPaint: number;
  readonly largestPaint: number;
  readonly blocked: number;
  readonly shift: number;
}

/** Gzipped size of everything a visit fetches from the pages (not from the API), by kind. */
async function firstLoad(hash: string): Promise<{ sizes: Map<string, number>; page: Loaded }> {
  const page = await bench.page();
  const sizes = new Map<string, number>();
  const waiting: Promise<void>[] = [];
  page.on('response', (answer) => {
    const { pathname } = new URL(answer.url());
    if (pathname.startsWith('/api/')) return;
    waiting.push(
      answer
        .body()
        .then((body) => {
          const kind = /worker|chart(?=-)/.exec(pathname)?.[0] ?? /\.(\w+)$/.exec(pathname)?.[1] ?? 'html';
          const size = kind === 'woff2' ? body.length : gzipSync(body, { level: 9 }).length;
          sizes.set(kind, (sizes.get(kind) ?? 0) + size);
        })
        .catch(() => undefined),
    );
  });
  await page.goto(`${bench.address}/${hash}`);
  await page.locator('tl-page h1').first().waitFor();
  await page.waitForTimeout(800);
  // Those that arrive after the pause belong to the work, not to the first load.
  await Promise.allSettled(waiting.splice(0));
  page.removeAllListeners('response');
  const loaded = await page.evaluate(async () => {
    const found = { firstPaint: Number.NaN, largestPaint: Number.NaN, blocked: 0, shift: 0 };
    // No function here has a name: what runs the bench would wrap it in a helper the page does not have.
    for (const type of ['paint', 'largest-contentful-paint', 'longtask', 'layout-shift']) {
      new PerformanceObserver((list) => {
        for (const e of list.getEntries() as (PerformanceEntry & { value: number })[]) {
          if (e.name === 'first-contentful-paint') found.firstPaint = e.startTime;
          else if (type === 'largest-contentful-paint') found.largestPaint = e.startTime;
          else if (type === 'longtask') found.blocked += Math.max(0, e.duration - 50);
          else if (type === 'layout-shift') found.shift += e.value;
        }
      }).observe({ type, buffered: true });
    }
    await new Promise((resolve) => setTimeout(resolve, 300));
    return found;
  });
  return { sizes, page: loaded };
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** From the change of address to a painted heading of the new screen, measured in the page. */
function switchTo(page: Page, screen: string): Promise<number> {
  return page.evaluate(async (name) => {
    const start = performance.now();
    location.hash = `#/${name}`;
    const app = document.querySelector('tl-app')!.shadowRoot!;
    for (;;) {
      await new Promise((resolve) => requestAnimationFrame(resolve));
      const shown = app.querySelector(`tl-${name}-screen`)?.shadowRoot?.querySelector('tl-page');
      if (shown?.shadowRoot?.querySelector('h1')) return performance.now() - start;
    }
  }, screen);
}

for (const hash of ['', ...SCREENS.slice(0, -1).map((name) => `#/${name}`)]) {
  const { sizes, page: p } = await firstLoad(hash);
  const total = [...sizes].reduce((sum, [kind, size]) => sum + (LATER.has(kind) ? 0 : size), 0);
  const parts = [...sizes].map(([kind, size]) => `${kind} ${(size / KB).toFixed(1)}`).join(', ');
  console.log(
    `first load of ${hash || '#/rack'}: ${(total / KB).toFixed(1)} kB gzip before workers and charts (${parts}); ` +
      `first paint ${p.firstPaint.toFixed(0)} ms, largest ${p.largestPaint.toFixed(0)} ms, ` +
      `blocked ${p.blocked.toFixed(0)} ms, layout shift ${p.shift.toFixed(3)}`,
  );
}

const page = await bench.page();
await page.goto(bench.address);
await page.locator('tl-page h1').first().waitFor();
// Nobody leaves the first screen at once; by now the page has fetched the others.
const LOOKED = 5000;
await page.waitForTimeout(LOOKED);
const first = new Map<string, number>();
const again = new Map<string, number[]>();
for (let round = 0; round < 4; round++) {
  for (const screen of SCREENS) {
    const took = await switchTo(page, screen);
    if (round === 0) first.set(screen, took);
    else again.set(screen, [...(again.get(screen) ?? []), took]);
    await page.waitForTimeout(150);
  }
}
console.log(
  `screen switch, ms:          first (${LOOKED / 1000} s after the page came)   later (median of 3)`,
);
for (const screen of SCREENS) {
  console.log(
    `  ${screen.padEnd(24)} ${first.get(screen)!.toFixed(0).padStart(6)} ${median(again.get(screen)!).toFixed(0).padStart(7)}`,
  );
}

/**
 * Each key of a ladder on the practice head: to the verdict's first frame, and how much of it was the bench's answer
 * (two exposures, dark and light, then judging and storing).
 */
async function verdicts(): Promise<void> {
  await page.goto(`${bench.address}/#/rack`);
  await page.evaluate(() =>
    fetch('/api/demo-rack', { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{}' }),
  );
  await page.reload();
  await setPracticeHead(page);
  await enter(page, /^Go to the ladder/);
  await enter(page, /^Demo white/);
  await enter(page, /^Start this ladder/);
  await readLadder(page);
  await enter(page, /^Take the next tube/);
  await enter(page, /^Measure /);
  await enter(page, /^Start this ladder/);
  await page.locator('tl-ladder-session').waitFor();
  await page.evaluate(() => {
    const seen: { key: number; shown: number; answer: number }[] = [];
    Object.assign(globalThis, { seen });
    let key = 0;
    addEventListener('keydown', () => (key = performance.now()), true);
    const session = document
      .querySelector('tl-app')!
      .shadowRoot!.querySelector('tl-ladder-screen')!
      .shadowRoot!.querySelector('tl-ladder-session')!.shadowRoot!;
    let last = '';
    new MutationObserver(() => {
      const says = session.querySelector('.verdict')?.textContent ?? '';
      if (says === last || says === '') return;
      last = says;
      requestAnimationFrame(() => {
        const shown = performance.now();
        const asked = performance
          .getEntriesByType('resource')
          .filter((e) => e.name.endsWith('/readings') && e.startTime >= key)
          .at(-1);
        seen.push({ key, shown, answer: asked?.duration ?? Number.NaN });
      });
    }).observe(session, { subtree: true, childList: true, characterData: true });
  });
  await readLadder(page);
  const seen = await page.evaluate(
    () => (globalThis as unknown as { seen: { key: number; shown: number; answer: number }[] }).seen,
  );
  const all = seen.map((s) => s.shown - s.key);
  const answers = seen.map((s) => s.answer);
  console.log(
    `key to verdict, ms: median ${median(all).toFixed(0)} of ${all.length}, of which the bench's answer ${median(answers).toFixed(0)}`,
  );
}
await verdicts();

await bench.close();
