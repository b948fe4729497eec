/**
 * The pages: what a first visit loads, how long a screen takes to stand, and how long after the head's answer the
 * verdict is on the page. Printed, never asserted.
 *
 *   npm run bench -- web
 */
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { benchUnderTest } from '../tests/browser/bench-under-test.ts';
import { measuredPalette } from '../tests/browser/measured-palette.ts';

const SCREENS = ['bench', 'ladder', 'constants', 'checks', 'profile', 'mixing', 'limits', 'study', 'rack'];
const KB = 1000;

const bench = await benchUnderTest();
await measuredPalette(bench.address);

/** Gzipped size of everything a visit fetches from the pages (not from the API), by kind. */
async function firstLoad(hash: string): Promise<{ sizes: Map<string, number>; shift: number }> {
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
          const kind = /worker/.test(pathname) ? 'worker' : (/\.(\w+)$/.exec(pathname)?.[1] ?? 'html');
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
  // Layout shifts of a load without any input: CLS as browsers define it, unitless.
  const shift = await page.evaluate(async () => {
    let sum = 0;
    const watch = new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) sum += (entry as PerformanceEntry & { value: number }).value;
    });
    watch.observe({ type: 'layout-shift', buffered: true });
    await new Promise((resolve) => setTimeout(resolve, 300));
    return sum;
  });
  return { sizes, shift };
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
  const { sizes, shift } = await firstLoad(hash);
  const total = [...sizes].reduce((sum, [kind, size]) => sum + (kind === 'worker' ? 0 : size), 0);
  const parts = [...sizes].map(([kind, size]) => `${kind} ${(size / KB).toFixed(1)}`).join(', ');
  console.log(
    `first load of ${hash || '#/rack'}: ${(total / KB).toFixed(1)} kB gzip before workers (${parts}); layout shift ${shift.toFixed(3)}`,
  );
}

const page = await bench.page();
await page.goto(bench.address);
await page.locator('tl-page h1').first().waitFor();
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
console.log('screen switch, ms:          first   later (median of 3)');
for (const screen of SCREENS) {
  console.log(
    `  ${screen.padEnd(24)} ${first.get(screen)!.toFixed(0).padStart(6)} ${median(again.get(screen)!).toFixed(0).padStart(7)}`,
  );
}

await bench.close();
