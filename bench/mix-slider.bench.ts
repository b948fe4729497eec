/**
 * How long the Mixing screen takes from a move of a slider to the repaint of the pile, in Chromium, with twelve tubes in
 * the pile: in milliseconds, and in frames after the move.
 *
 *   npm run bench -- mix-slider
 */
import { GRID_NM } from '../src/colour/grid.ts';
import { writeProfile } from '../src/profile/write.ts';
import type { PaletteProfile } from '../src/profile/schema.ts';
import { benchUnderTest } from '../tests/browser/bench-under-test.ts';
import { inventedPalette } from '../tests/mix/invented-palette.ts';
import { inventedProfile } from '../tests/profile/invented-profile.ts';

const profile: PaletteProfile = {
  ...inventedProfile(),
  wavelengths: [...GRID_NM],
  white: 'white',
  tubes: inventedPalette().tubes.map(({ id, lnK, lnS }) => ({
    id,
    label: id,
    pigments: [],
    ...(id === 'white' ? { role: 'white' as const } : {}),
    K: Array.from(lnK, (v) => Math.exp(v)),
    S: Array.from(lnS, (v) => Math.exp(v)),
    covariance: { own: [Array.from({ length: 2 * lnK.length }, () => 0.01)], shared: [] },
  })),
};

const bench = await benchUnderTest();
const put = await fetch(`${bench.address}/api/imports`, {
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify({ fileName: 'twelve.json', text: writeProfile(profile) }),
});
if (!put.ok) throw new Error(`The profile was not taken: ${await put.text()}`);
const page = await bench.page();
await page.goto(`${bench.address}/#/mixing`);
await page.locator('tl-pull-slider').first().waitFor();
// As text: the loader would put names of its own into a function, which the page does not know.
const found: { ms: number[]; frames: number[] } = await page.evaluate(`(async () => {
  const deep = (sel) => {
    const found = [];
    const walk = (n) => {
      if (n.shadowRoot) walk(n.shadowRoot);
      for (const c of n.children ?? []) { if (c.matches(sel)) found.push(c); walk(c); }
    };
    walk(document);
    return found;
  };
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  const wait = (ms) => new Promise((done) => setTimeout(done, ms));
  const inputs = deep('tl-pull-slider').map((s) => s.shadowRoot.querySelector('input'));
  const move = (i, v) => {
    inputs[i].value = String(v);
    inputs[i].dispatchEvent(new Event('input', { bubbles: true, composed: true }));
  };
  for (let i = 0; i < inputs.length; i++) { move(i, 300 + 10 * i); await wait(50); }
  await wait(800);
  const pile = () =>
    [...deep('.pile')[0].querySelector('tl-drawdown').shadowRoot.querySelectorAll('svg rect')]
      .map((r) => r.getAttribute('fill')).join();
  const ms = [];
  const frames = [];
  for (let k = 0; k < 60; k++) {
    await frame();
    const before = pile();
    const began = performance.now();
    move(0, 350 + (k % 2 ? 220 : 0) + k);
    let n = 0;
    while (pile() === before && n < 60) { await frame(); n++; }
    ms.push(performance.now() - began);
    frames.push(n);
    await wait(30);
  }
  return { ms, frames };
})()`);
const at = (list: readonly number[], q: number): number =>
  list.toSorted((a, b) => a - b)[Math.floor(q * list.length)]!;
console.log(
  `a slider move, twelve tubes: repainted after ${at(found.frames, 0.5)} frame (median), ${at(found.frames, 0.9)} (p90); ` +
    `${at(found.ms, 0.5).toFixed(1)} ms (median), ${at(found.ms, 0.1).toFixed(1)} ms (p10)`,
);
await bench.close();
