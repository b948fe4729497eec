/**
 * CIEDE2000 as the search uses it, about one wanted colour, against the formula as src/colour has it, which stands on
 * the paper's own table (tests/colour/ciede2000.test.ts).
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ciede2000Steps } from '../../src/colour/ciede2000.ts';
import { differenceAbout } from '../../src/mix/search/ciede2000-about.ts';
import { PRINTED_4_DECIMALS, SAME_ARITHMETIC } from '../tolerances.ts';

const PLAIN = { lightness: 1, chroma: 1, hue: 1 };
/** Central differences of step 1e-5 on a number up to some thousands: rounding 1e-13 over 1e-5, and the third derivative. */
const CENTRAL_DIFFERENCE = 2e-5;

const colour = fc.record({
  L: fc.double({ min: 5, max: 98, noNaN: true }),
  a: fc.double({ min: -80, max: 80, noNaN: true }),
  b: fc.double({ min: -80, max: 90, noNaN: true }),
});

describe('CIEDE2000 about a wanted colour', () => {
  it('is nothing at the colour itself, neutral or not', () => {
    for (const c of [
      { L: 50, a: 0, b: 0 },
      { L: 50, a: 10, b: -30 },
    ]) {
      const g = new Float64Array(3);
      expect(differenceAbout(c, PLAIN).squareAndSlopes(c.L, c.a, c.b, g)).toBe(0);
      expect([...g].every((v) => Math.abs(v) < SAME_ARITHMETIC)).toBe(true);
    }
  });

  it('gives the published test pairs (Sharma, Wu and Dalal 2005, table 1)', () => {
    const rows = readFileSync(new URL('../fixtures/colour/ciede2000_sharma_34.csv', import.meta.url), 'utf8')
      .trim()
      .split('\n')
      .filter((line) => /^[\d-]/.test(line))
      .map((line) => line.split(',').map(Number));
    expect(rows.length).toBe(34);
    for (const row of rows) {
      const [L1, a1, b1, L2, a2, b2] = row.slice(1, 7);
      const square = differenceAbout({ L: L1!, a: a1!, b: b1! }, PLAIN).square(L2!, a2!, b2!);
      expect(Math.abs(Math.sqrt(square) - row.at(-1)!)).toBeLessThan(PRINTED_4_DECIMALS);
    }
  });

  it('is the formula of the colour room for any pair', () => {
    fc.assert(
      fc.property(colour, colour, (one, two) => {
        const { dE00 } = ciede2000Steps(one, two);
        const square = differenceAbout(one, PLAIN).square(two.L, two.a, two.b);
        expect(Math.abs(Math.sqrt(square) - dE00)).toBeLessThan(SAME_ARITHMETIC * Math.max(1, dE00));
      }),
    );
  });

  it('has the slopes that differences of it have, its parts weighted or not', () => {
    const step = 1e-5;
    const weights = fc.constantFrom(PLAIN, { lightness: 100, chroma: 1, hue: 1 }, { ...PLAIN, hue: 5 });
    fc.assert(
      fc.property(colour, colour, weights, (one, two, w) => {
        // Across opposite hues the formula jumps (the paper, "Mathematical observations"); near no chroma it has a corner.
        const s = ciede2000Steps(one, two);
        const turn = Math.abs(Math.abs(s.h1p - s.h2p) - 180);
        fc.pre(turn > 1 && s.C1p > 1 && s.C2p > 1);
        const about = differenceAbout(one, w);
        const g = new Float64Array(3);
        const square = about.squareAndSlopes(two.L, two.a, two.b, g);
        expect(square).toBe(about.square(two.L, two.a, two.b));
        const at = [two.L, two.a, two.b] as const;
        for (let k = 0; k < 3; k++) {
          const off = (by: number): number => {
            const [L, a, b] = at.map((v, i) => (i === k ? v + by : v));
            return about.square(L!, a!, b!);
          };
          const slope = (off(step) - off(-step)) / (2 * step);
          expect(Math.abs(g[k]! - slope)).toBeLessThan(CENTRAL_DIFFERENCE * Math.max(1, square));
        }
      }),
    );
  });
});
