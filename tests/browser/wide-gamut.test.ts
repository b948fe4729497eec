/**
 * Colour on a screen wider than sRGB: CSS Color 4 display-p3 where Media Queries 4 `color-gamut: p3` holds. Chromium
 * answers the query as asked; what it draws is not measured here.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { benchUnderTest, type BenchUnderTest } from './bench-under-test.ts';
import { measuredPalette } from './measured-palette.ts';

let bench: BenchUnderTest;
let tube: string;

beforeAll(async () => {
  bench = await benchUnderTest();
  tube = await measuredPalette(bench.address);
});
afterAll(() => bench.close());

async function filmsOn(gamut: 'srgb' | 'p3'): Promise<{ fills: string[]; outside: number }> {
  const page = await bench.page();
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Emulation.setEmulatedMedia', { features: [{ name: 'color-gamut', value: gamut }] });
  await page.goto(`${bench.address}/#/constants/${tube}`);
  await page.locator('tl-tube-films tl-drawdown svg').first().waitFor();
  const fills = await page
    .locator('tl-tube-films tl-drawdown svg [fill]')
    .evaluateAll((drawn) => drawn.map((d) => d.getAttribute('fill') ?? ''));
  const outside = await page.locator('tl-tube-films').getByText('outside this screen').count();
  return { fills, outside };
}

describe('paint on a screen', () => {
  it('is drawn in sRGB where the screen has no more, and says what it cannot show', async () => {
    const { fills, outside } = await filmsOn('srgb');
    expect(fills.filter((f) => f.startsWith('color('))).toEqual([]);
    expect(outside).toBeGreaterThan(0);
  });

  it('is drawn in display-p3 where the screen has it, and less falls outside', async () => {
    const narrow = await filmsOn('srgb');
    const wide = await filmsOn('p3');
    expect(wide.fills.some((f) => f.startsWith('color(display-p3 '))).toBe(true);
    expect(wide.outside).toBeLessThanOrEqual(narrow.outside);
  });
});
