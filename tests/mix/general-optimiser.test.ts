/**
 * The search against a general-purpose optimiser on the same problem: scipy's SLSQP (D. Kraft, DFVLR-FB 88-28, 1988).
 * Skipped, and said so, where no Python with scipy is found.
 */
import { describe, expect, it } from 'vitest';
import type { Lab } from '../../src/colour/lab.ts';
import { matchColour, predictMix, tubeSet } from '../../src/mix/index.ts';
import { OTHER_OPTIMISER } from '../tolerances.ts';
import { inventedPalette } from './invented-palette.ts';
import { pythonWithScipy, slsqp } from './slsqp.ts';

const python = pythonWithScipy();
const palette = inventedPalette();
const set = tubeSet(palette);

const targets: Lab<'D65/10deg'>[] = [
  predictMix(palette, { white: 4, 'deep-blue': 1, 'yellow-earth': 1 }).lab,
  predictMix(palette, { white: 1, 'warm-red': 1, 'golden-yellow': 0.3, black: 0.05 }).lab,
  { L: 50, a: -60, b: 5, white: 'D65/10deg' },
  { L: 35, a: 45, b: -30, white: 'D65/10deg' },
  { L: 80, a: 5, b: 70, white: 'D65/10deg' },
];
const families = [
  ['white', 'deep-blue', 'yellow-earth'],
  ['black', 'golden-yellow', 'warm-red', 'white'],
  ['cool-green', 'green-blue', 'white'],
  ['deep-blue', 'red-lake', 'white'],
  ['golden-yellow', 'lemon-yellow', 'white'],
  ['cool-green', 'dark-earth', 'red-earth', 'white'],
];

/** Even parts, and each tube leading. */
function starts(m: number): number[][] {
  return [
    Array.from({ length: m }, () => 1),
    ...Array.from({ length: m }, (_, k) => Array.from({ length: m }, (__, j) => (j === k ? 8 : 1))),
  ];
}

/**
 * Families farther off than this are left out: across opposite hues CIEDE2000 jumps (Sharma, Wu and Dalal 2005, section
 * "Mathematical observations"), and where two optimisers stop on the edge of a jump says nothing about either.
 */
const MEANINGFUL = 20;

describe.skipIf(!python)(`against SLSQP${python ? '' : ' (skipped: no Python with scipy here)'}`, () => {
  it(
    'no family is worse than it finds by more than 0.02, from any of its starts',
    { timeout: 120_000 },
    () => {
      const answers = slsqp(
        python!,
        set,
        targets.map(({ L, a, b }) => [L, a, b] as const),
        families.map((f) => f.map((id) => set.ids.indexOf(id))),
        families.map((f) => starts(f.length)),
      );
      let compared = 0;
      targets.forEach((lab, t) => {
        families.forEach((only, f) => {
          const ours = matchColour(palette, { lab }, { only, closeEnough: 1e-4 }).recipes.map(
            (r) => r.deltaE00,
          );
          const theirs = answers[t]!.deltaE00[f]!;
          if (theirs > MEANINGFUL) return;
          compared++;
          expect(Math.min(...ours), `target ${t}, ${only.join('+')}`).toBeLessThan(theirs + OTHER_OPTIMISER);
        });
      });
      expect(compared).toBeGreaterThan(10);
    },
  );
});
