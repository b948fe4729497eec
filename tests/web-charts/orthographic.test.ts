import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { see, turned } from '../../web/src/charts/orthographic.ts';
import { SAME_ARITHMETIC } from '../tolerances.ts';

const colour = fc.record({
  L: fc.double({ min: 0, max: 100, noNaN: true }),
  a: fc.double({ min: -120, max: 120, noNaN: true }),
  b: fc.double({ min: -120, max: 120, noNaN: true }),
});
const turn = fc.record({
  around: fc.double({ min: 0, max: 360, noNaN: true }),
  above: fc.double({ min: -90, max: 90, noNaN: true }),
});

describe('the turntable', () => {
  it('keeps mid grey at its centre however it is turned', () => {
    fc.assert(fc.property(turn, (t) => Object.values(see({ L: 50, a: 0, b: 0 }, t)).every((v) => v === 0)));
  });

  it('keeps distances: it turns, it does not stretch', () => {
    fc.assert(
      fc.property(colour, turn, (c, t) => {
        const p = see(c, t);
        const before = Math.hypot(c.L - 50, c.a, c.b);
        return Math.abs(Math.hypot(p.x, p.y, p.depth) - before) <= SAME_ARITHMETIC * (1 + before);
      }),
    );
  });

  it('shows a* to the right and b* upward from straight above', () => {
    const p = see({ L: 80, a: 10, b: 20 }, { around: 0, above: 90 });
    expect(p.x).toBeCloseTo(10, 10);
    expect(p.y).toBeCloseTo(20, 10);
    expect(p.depth).toBeCloseTo(30, 10);
  });

  it('stops at the poles and goes round and round', () => {
    expect(turned({ around: 350, above: 80 }, 20, 30)).toEqual({ around: 10, above: 90 });
    expect(turned({ around: 10, above: -80 }, -20, -30)).toEqual({ around: 350, above: -90 });
  });
});
