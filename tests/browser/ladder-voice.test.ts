/** The ear is told what the far letters say; speech and sound are stood in for. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { benchUnderTest, type BenchUnderTest } from './bench-under-test.ts';
import { enter } from './by-keyboard.ts';
import { readLadder, setPracticeHead } from './practice-ladder.ts';

let bench: BenchUnderTest;
let page: Page;

beforeAll(async () => {
  bench = await benchUnderTest();
  page = await bench.page();
  await page.addInitScript(`
    localStorage.setItem('tintladder.settings', JSON.stringify({ tone: true, speech: true, walkDone: true }));
    window.heard = { said: [], tones: [] };
    Object.defineProperty(window, 'speechSynthesis', { value: { cancel() {}, speak(u) { heard.said.push(u.text); } } });
    const node = () => ({ connect: (to) => to, gain: { setValueAtTime() {}, linearRampToValueAtTime() {} } });
    window.AudioContext = class {
      currentTime = 0;
      destination = {};
      createGain() { return node(); }
      createOscillator() {
        const tone = { ...node(), frequency: { value: 0 }, start: () => heard.tones.push(tone.frequency.value), stop() {} };
        return tone;
      }
    };`);
  await page.goto(bench.address);
  await enter(page, /^Take the demo rack/);
  await page.getByText('Demo: invented paints').waitFor();
  await setPracticeHead(page);
  await page.goto(`${bench.address}/#/ladder`);
  await enter(page, /^Demo yellow earth/);
  await enter(page, /^Start this ladder/);
});
afterAll(() => bench.close());

const heard = (): Promise<{ said: string[]; tones: number[] }> => page.evaluate('window.heard') as never;

it('sounds a tone and says the far words when a reading is kept', async () => {
  await readLadder(page, 1);
  const { said, tones } = await heard();
  const far = (await page.locator('tl-ladder-session .far').textContent())!.trim();
  expect(tones).toEqual([880]);
  expect(said.at(-1)).toMatch(/^Kept/);
  expect(said.at(-1)).toContain(far);
});
