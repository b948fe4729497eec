/** Values under patches: what a colour without a spectrum is said to be, beside one that has it. */
import { describe, expect, it } from 'vitest';
import { patchBeside, patchOfLab } from '../../web/src/design/patch.ts';

const white = 'D65/10deg' as const;
const blue = { L: 52, a: 2, b: -46, white };

describe('a wanted Lab beside a mix whose value is known from its spectrum', () => {
  const known = { lab: blue, value: patchOfLab(blue).value - 0.25 };

  it('has the same value where the colours are the same', () => {
    expect(patchBeside(blue, known).value).toBeCloseTo(known.value, 12);
  });

  it('differs by what the two Labs differ, and leaves the known one as it was', () => {
    const lighter = { ...blue, L: 57 };
    const step = patchOfLab(lighter).value - patchOfLab(blue).value;
    expect(step).toBeGreaterThan(0.4);
    expect(patchBeside(lighter, known).value - known.value).toBeCloseTo(step, 12);
  });
});
