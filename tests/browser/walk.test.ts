/**
 * The main job, as a new user does it: an empty rack, the practice instrument, a whole ladder of two tubes, constants,
 * a downloaded profile that its published schema accepts. Keyboard alone.
 */
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { benchUnderTest, type BenchUnderTest } from './bench-under-test.ts';
import { enter, tabTo } from './by-keyboard.ts';
import { readLadder, setPracticeHead, writeTube } from './practice-ladder.ts';

let bench: BenchUnderTest;
let page: Page;

beforeAll(async () => {
  bench = await benchUnderTest();
  page = await bench.page();
  await page.goto(bench.address);
});
afterAll(() => bench.close());

describe('from an empty rack to a profile, by keyboard', () => {
  it('puts a white and a blue in the rack', async () => {
    await enter(page, /^Put in your white/);
    await writeTube(page, 'Studio white', 'Demo wh');
    await enter(page, /^Put in a tube/);
    await writeTube(page, 'Deep blue', 'Demo deep');
    await page.getByRole('link', { name: /Measure Studio white/ }).waitFor();
    await bench.picture(page, 'walk-rack');
  });

  it('sets the practice head on white tile and black trap', async () => {
    await setPracticeHead(page);
    await bench.picture(page, 'walk-bench');
  });

  it('reads the white by itself, any key', async () => {
    await enter(page, /^Go to the ladder/);
    await enter(page, /^Studio white/);
    await enter(page, /^Start this ladder/);
    await readLadder(page);
    await enter(page, /^Take the next tube/);
  });

  it('weighs and reads the ladder of the blue, and loses nothing when the page goes away', async () => {
    await enter(page, /^Measure Deep blue/);
    await enter(page, /^Start this ladder/);
    await page.locator('tl-ladder-session').waitFor();
    await readLadder(page, 1);
    await page.getByText('Kept. 1 of 3').waitFor();
    await page.reload();
    await page.getByText('1 of 3 read').first().waitFor();
    const took = await readLadder(page);
    await bench.picture(page, 'walk-ladder', true);
    took.sort((a, b) => a - b);
    console.log(
      `from key to verdict: median ${took[Math.floor(took.length / 2)]} ms, slowest ${took.at(-1)} ms of ${took.length}`,
    );
    expect(took.length).toBeGreaterThanOrEqual(11);
  });

  it('fits and shows the constants', async () => {
    await enter(page, /^Fit now/);
    await page.waitForURL(/#\/constants/, { timeout: 60_000 });
    await page.locator('tl-constants-chart').first().waitFor();
    await bench.picture(page, 'walk-constants', true);
  });

  it('downloads a profile that the published schema accepts', async () => {
    await enter(page, /^Profile$/);
    await tabTo(page, /Download|Save|Export|Keep the profile/i);
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
    const profile: unknown = JSON.parse(readFileSync(await download.path(), 'utf8'));
    const schema = JSON.parse(
      readFileSync(new URL('../../docs/palette-profile.schema.json', import.meta.url), 'utf8'),
    ) as object;
    const ajv = new Ajv2020({ strict: true, allErrors: true });
    addFormats.default(ajv);
    const validate = ajv.compile(schema);
    expect(validate(profile), JSON.stringify(validate.errors)).toBe(true);
    await bench.picture(page, 'walk-profile', true);
  });
});
