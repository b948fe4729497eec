import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Lab } from '../../src/colour/lab.ts';
import { chroma, hueDegrees } from '../../src/colour/lab.ts';
import {
  MixProblem,
  MixingStopped,
  oneMoreTube,
  paletteLimits,
  predictMix,
  reachOf,
} from '../../src/mix/index.ts';
import { inventedPalette } from './invented-palette.ts';

const six = inventedPalette(['white', 'deep-blue', 'golden-yellow', 'warm-red', 'red-earth', 'dark-earth']);
const limits = paletteLimits(six);

/** Seeded random mixes of all tubes, most of them near an edge or a corner. */
function mixes(count: number): Record<string, number>[] {
  let seed = 11;
  const uniform = (): number => (seed = (seed * 48271) % 2147483647) / 2147483647;
  return Array.from({ length: count }, () =>
    Object.fromEntries(six.tubes.map((t) => [t.id, uniform() < 0.4 ? 0 : Math.exp(8 * uniform() - 6)])),
  ).filter((m) => Object.values(m).some((v) => v > 0));
}
const many = mixes(3000).map((m) => predictMix(six, m));

describe('what is refused, in one sentence', () => {
  it('a value off the scale, hues nobody can go round, no tubes, nothing to add', () => {
    expect(() => paletteLimits(six, { values: [12] })).toThrow(/Value 12 is not on the scale/);
    expect(() => paletteLimits(six, { hues: 1 })).toThrow(MixProblem);
    expect(() => paletteLimits({ ...six, tubes: [] })).toThrow(/holds no tubes/);
    expect(() =>
      oneMoreTube(
        six,
        six.tubes.map((t) => t.id),
      ),
    ).toThrow(/already in use/);
    expect(() => paletteLimits(six, { watch: { shouldStop: () => true } })).toThrow(MixingStopped);
  });
});

describe('one tube, two tubes', () => {
  it('of one tube darkest and lightest are that tube', () => {
    const one = paletteLimits(inventedPalette(['deep-blue']));
    expect(one.darkest.shares).toEqual({ 'deep-blue': 1 });
    expect(one.lightest.shares).toEqual({ 'deep-blue': 1 });
    expect(one.volume).toBe(0);
    expect(one.slices).toEqual([]);
  });
});

/**
 * A search for chroma ends where it gains less than 0.05, and holds the hue to a few hundredths of a unit
 * (src/mix/limits/edges.ts): where the edge runs nearly along the hue, that is worth some tenths of chroma.
 */
const ALONG_AN_EDGE = 0.3;

describe('limits that tell of the same colours', () => {
  it('agree: the strongest of a hue is no weaker than any value slice has it, and every whole value has its leans', () => {
    const ids = ['white', 'green-blue', 'lemon-yellow', 'red-lake', 'warm-red', 'dark-earth'];
    for (const { strongest, slices, leans } of [limits, paletteLimits(inventedPalette(ids))]) {
      for (const { hue, chroma: most } of strongest) {
        const inSlices = slices.map((s) => s.edge.find((e) => e.hue === hue)!.chroma);
        expect(most, `hue ${hue}`).toBeGreaterThan(Math.max(...inSlices) - ALONG_AN_EDGE);
      }
      const values = leans.map((l) => l.value);
      expect(values).toEqual(expect.arrayContaining(slices.map((s) => s.value)));
    }
  });
});

describe('no mix of the tubes is beyond the limits found (3000 random mixes)', () => {
  it('none darker, none lighter', () => {
    expect(Math.min(...many.map((m) => m.value))).toBeGreaterThanOrEqual(limits.darkest.value - 1e-4);
    expect(Math.max(...many.map((m) => m.value))).toBeLessThanOrEqual(limits.lightest.value + 1e-4);
  });

  it('none stronger in its hue', () => {
    for (const { hue, chroma: strongest } of limits.strongest) {
      for (const m of many) {
        const off = Math.abs(((hueDegrees(m.lab) - hue + 540) % 360) - 180);
        if (off < 0.4) expect(m.chroma).toBeLessThanOrEqual(strongest * 1.02 + 0.5);
      }
    }
  });

  it('none nearer to neutral at the values of the neutral line', () => {
    for (const n of limits.neutrals) {
      expect(Math.abs(n.value - n.wantedValue)).toBeLessThan(0.02);
      const near = many.filter((m) => Math.abs(m.value - n.value) < 0.02).map((m) => m.chroma);
      for (const c of near) expect(c).toBeGreaterThanOrEqual(n.chroma - 0.1);
    }
    expect(limits.neutrals.length).toBeGreaterThan(8);
  });

  it('none warmer or cooler at its value', () => {
    for (const { value, warmest, coolest } of limits.leans) {
      for (const m of many.filter((x) => Math.abs(x.value - value) < 0.02)) {
        expect(m.lean).toBeLessThanOrEqual(warmest.lean + 1);
        expect(m.lean).toBeGreaterThanOrEqual(coolest.lean - 1);
      }
    }
  });
});

it('limits do not depend on the order of the tubes', () => {
  const turned = paletteLimits({ ...six, tubes: six.tubes.toReversed() });
  expect(turned.volume).toBe(limits.volume);
  expect(turned.neutrals.map((n) => n.shares)).toEqual(limits.neutrals.map((n) => n.shares));
});

describe('every limit is a mix: its shares give its colour', () => {
  it('darkest, lightest, neutrals, strongest, leans', () => {
    const edges = [
      limits.darkest,
      limits.lightest,
      ...limits.neutrals,
      ...limits.strongest,
      ...limits.leans.flatMap((l) => [l.warmest, l.coolest]),
    ];
    for (const e of edges) {
      const p = predictMix(six, e.shares);
      expect(p.value).toBeCloseTo(e.value, 3);
      expect(chroma(p.lab)).toBeCloseTo(e.chroma, 2);
      expect(Object.values(e.shares).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
    }
  });

  it('strongest colours lie on the hue asked for', () => {
    for (const s of limits.strongest) {
      const across = s.chroma * Math.sin(((hueDegrees(s.lab) - s.hue) * Math.PI) / 180);
      expect(Math.abs(across)).toBeLessThan(0.6);
    }
  });
});

describe('a palette of a white, a warm and a cool', () => {
  const three = paletteLimits(inventedPalette(['white', 'red-earth', 'deep-blue']));

  it('is a sheet: its volume is next to nothing against one tube more, its leans are not', () => {
    expect(three.volume).toBeLessThan(0.02 * limits.volume);
    for (const l of three.leans.filter((x) => x.value >= 4 && x.value <= 7)) {
      expect(l.warmest.lean).toBeGreaterThan(5);
      expect(l.coolest.lean).toBeLessThan(-5);
    }
  });

  it('says which one more tube adds most, and what the order rests on', () => {
    const all = inventedPalette();
    const { without, gains } = oneMoreTube(all, ['white', 'red-earth', 'deep-blue']);
    expect(gains).toHaveLength(all.tubes.length - 3);
    for (let i = 1; i < gains.length; i++) expect(gains[i]!.volume).toBeLessThanOrEqual(gains[i - 1]!.volume);
    // A strong clear yellow opens greens and oranges; another dull earth opens next to nothing.
    expect(['lemon-yellow', 'golden-yellow']).toContain(gains[0]!.tube);
    expect(gains[0]!.volume).toBeGreaterThan(without);
    expect(gains.findIndex((g) => g.tube === 'dark-earth')).toBeGreaterThan(5);
  });
});

describe('inside or outside, by solving', () => {
  it('every mix of the tubes is inside', () => {
    fc.assert(
      fc.property(fc.constantFrom(...many.slice(0, 200)), (m) => {
        expect(reachOf(six, { lab: m.lab }).inside).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  it('a little outside the strongest colour of a hue is outside, a little inside is inside', () => {
    for (const s of limits.strongest.filter((x) => x.chroma > 25)) {
      const at = (k: number): Lab => ({ ...s.lab, a: k * s.lab.a, b: k * s.lab.b });
      expect(reachOf(six, { lab: at(1.15) }).inside).toBe(false);
      expect(reachOf(six, { lab: at(0.9) }).deltaE00).toBeLessThan(1.5);
    }
  });
});
