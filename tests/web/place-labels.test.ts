import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeLabels } from '../../web/src/charts/place-labels.ts';

const at = (text: string, x: number, y: number) => ({ text, x, y });

describe('names beside marks', () => {
  it('stand to the right of a mark that is alone', () => {
    const [label] = placeLabels([at('white', 100, 100)], 400, 300);
    expect(label).toMatchObject({ anchor: 'start', led: false, at: { y: 100 } });
    expect(label!.at.x).toBeGreaterThan(100);
  });

  it('keep inside the picture, and off a text that stands there already', () => {
    const [label] = placeLabels([at('bone black', 390, 150)], 400, 300);
    expect(label!.anchor).toBe('end');
    const [second] = placeLabels([at('red', 100, 100)], 400, 300, [at('L* 50', 130, 100)]);
    expect(second!.at).not.toEqual({ x: 113, y: 100 });
  });

  it('of two marks in one place do not lie over each other', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 150, max: 350 }),
        fc.integer({ min: 100, max: 300 }),
        fc.integer({ min: 0, max: 30 }),
        (x, y, off) => {
          const [p, q] = placeLabels([at('warm yellow', x, y), at('white', x + off, y)], 500, 400);
          const across = Math.abs(p!.at.x - q!.at.x);
          expect(Math.abs(p!.at.y - q!.at.y) >= 16 || p!.anchor !== q!.anchor || across >= 35).toBe(true);
        },
      ),
    );
  });
});
