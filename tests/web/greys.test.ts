/**
 * The greys of the page, computed from the sRGB definition (IEC 61966-2-1) and CIE 1976 L* (ISO/CIE 11664-4), and
 * the contrasts of WCAG 2.2 (relative luminance as defined there).
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const css = readFileSync(new URL('../../web/src/design/page.css', import.meta.url), 'utf8');
const design = readFileSync(new URL('../../docs/design.md', import.meta.url), 'utf8');

/** Custom properties of a theme's block. */
function theme(name: string): Record<string, string> {
  const block = new RegExp(`\\[data-theme='${name}'\\] \\{([^}]*)\\}`).exec(css)?.[1] ?? '';
  return Object.fromEntries([...block.matchAll(/--([\w-]+): (#[0-9a-f]{6})/g)].map((m) => [m[1]!, m[2]!]));
}

const channels = (hex: string): number[] =>
  [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16) / 255);
const linear = (v: number): number => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
function luminance(hex: string): number {
  const [r, g, b] = channels(hex).map(linear) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function lightness(hex: string): number {
  const Y = luminance(hex);
  return Y > (6 / 29) ** 3 ? 116 * Math.cbrt(Y) - 16 : (29 / 3) ** 3 * Y;
}
function contrast(a: string, b: string): number {
  const [hi, lo] = [luminance(a), luminance(b)].toSorted((x, y) => y - x) as [number, number];
  return (hi + 0.05) / (lo + 0.05);
}

describe.each(['middle', 'light', 'dark'])('the %s theme', (name) => {
  const t = theme(name);

  it('has no hue in anything but paint: R = G = B', () => {
    expect(Object.keys(t).length).toBeGreaterThanOrEqual(7);
    for (const [key, hex] of Object.entries(t)) expect(new Set(channels(hex)).size, key).toBe(1);
  });

  it('sets ink on ground, on a raised and on a sunk step at 4.5 : 1 or better (WCAG 2.2, 1.4.3)', () => {
    for (const on of ['ground', 'raised', 'sunk']) {
      expect(contrast(t['ink']!, t[on]!), on).toBeGreaterThanOrEqual(4.5);
    }
    expect(contrast(t['on-ink']!, t['ink']!)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(t['on-chalk']!, t['chalk']!)).toBeGreaterThanOrEqual(4.5);
  });

  it('stands in docs/design.md as it is', () => {
    for (const step of ['ground', 'raised', 'sunk', 'ink', 'chalk']) {
      expect(design).toContain(
        `\`${t[step]}\` L\\* ${lightness(t[step]!)
          .toFixed(1)
          .replace(/\.0$/, (s) => (/^(#000000|#ffffff)$/.test(t[step]!) ? '' : s))}`,
      );
    }
    expect(design).toContain(`${contrast(t['ink']!, t['ground']!).toFixed(1)} : 1 ${name}`);
  });
});

it('keeps the middle ground inside L* 45-55, the neutral surround of ISO 3668', () => {
  const L = lightness(theme('middle')['ground']!);
  expect(L).toBeGreaterThanOrEqual(45);
  expect(L).toBeLessThanOrEqual(55);
});

it('brings no colour in anywhere else: every colour of the page and its parts is a grey', () => {
  for (const [hex] of css.matchAll(/#[0-9a-f]{6}\b/g)) expect(new Set(channels(hex)).size, hex).toBe(1);
});
