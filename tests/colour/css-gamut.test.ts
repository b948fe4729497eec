/**
 * Colours into a screen's gamut. Sources: culori's toGamut (the method of CSS Color 4, section 13.2) as a second
 * implementation of the search, Color.js for the matrices and for which colours a screen has.
 */
import Color from 'colorjs.io';
import { toGamut } from 'culori';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Gamut, inGamut, intoGamut } from '../../src/colour/css-gamut.ts';
import { displayColour } from '../../src/colour/display.ts';
import { GAMUT_SEARCH, SAME_MATRICES } from '../tolerances.ts';

const NAMES = { srgb: { culori: 'rgb', css: 'srgb' }, p3: { culori: 'p3', css: 'p3' } } as const;
const GAMUTS = ['srgb', 'p3'] as const;
/** Colours as XYZ by way of OKLCH, so that dark, pale, dull and impossible ones all come up. */
const colours = fc
  .tuple(
    fc.double({ min: 0.02, max: 0.99, noNaN: true }),
    fc.double({ min: 0, max: 0.37, noNaN: true }),
    fc.double({ min: 0, max: 360, noNaN: true }),
  )
  .map((lch) => new Color('oklch', lch).to('xyz-d65').coords.map(Number) as [number, number, number]);

function theirs([x, y, z]: readonly [number, number, number], gamut: Gamut): number[] {
  const mapped = toGamut(NAMES[gamut].culori, 'oklch')({ mode: 'xyz65', x, y, z }) as {
    r: number;
    g: number;
    b: number;
  };
  return [mapped.r, mapped.g, mapped.b];
}

describe('a colour into the colours of a screen', () => {
  it('leaves black, white and grey alone', () => {
    const white = new Color('white').to('xyz-d65').coords.map(Number) as [number, number, number];
    for (const gamut of GAMUTS) {
      expect(intoGamut([0, 0, 0], gamut)).toEqual([0, 0, 0]);
      for (const c of intoGamut(white, gamut)) expect(c).toBeCloseTo(1, 6);
      const grey = intoGamut([white[0] / 5, white[1] / 5, white[2] / 5], gamut);
      expect(Math.max(...grey) - Math.min(...grey)).toBeLessThan(SAME_MATRICES);
    }
  });

  it('never leaves the gamut, whatever is asked', () => {
    fc.assert(
      fc.property(colours, fc.constantFrom(...GAMUTS), (xyz, gamut) => {
        for (const c of intoGamut(xyz, gamut)) {
          expect(c).toBeGreaterThanOrEqual(0);
          expect(c).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  it('agrees with culori, mapped or not', () => {
    fc.assert(
      fc.property(colours, fc.constantFrom(...GAMUTS), (xyz, gamut) => {
        const want = theirs(xyz, gamut);
        intoGamut(xyz, gamut).forEach((c, i) => expect(Math.abs(c - want[i]!)).toBeLessThan(GAMUT_SEARCH));
      }),
    );
  });

  it('agrees with Color.js on the channels of a colour the screen has, and on which it has', () => {
    fc.assert(
      fc.property(colours, fc.constantFrom(...GAMUTS), (xyz, gamut) => {
        const other = new Color('xyz-d65', xyz).to(NAMES[gamut].css);
        const channels = other.coords.map(Number);
        // Color.js lets 7.5e-5 pass on the very edge.
        fc.pre(channels.every((c) => Math.abs(c) > 1e-4 && Math.abs(c - 1) > 1e-4));
        expect(inGamut(xyz, gamut)).toBe(other.inGamut());
        if (!other.inGamut()) return;
        intoGamut(xyz, gamut).forEach((c, i) =>
          expect(Math.abs(c - channels[i]!)).toBeLessThan(SAME_MATRICES),
        );
      }),
    );
  });

  it('has more colours in Display P3 than in sRGB, and says which', () => {
    // The green corner of Display P3, as CIELAB under D65 and the 2 degree observer.
    const [L, a, b] = new Color('p3', [0.1, 0.9, 0.1]).to('lab-d65').coords.map(Number) as [
      number,
      number,
      number,
    ];
    const shown = displayColour({ L, a, b, white: 'D65/2deg' });
    expect(shown).toMatchObject({ inSrgb: false, inP3: true });
    expect(shown.p3).toMatch(/^color\(display-p3 (9\.9|10\.0)\d% (89\.9|90\.0)\d% (9\.9|10\.0)\d%\)$/);
  });
});
