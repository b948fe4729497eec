import { describe, expect, it } from 'vitest';
import { spread } from '../../web/src/charts/end-labels.ts';

const at = (...ys: number[]) => ys.map((y, i) => ({ y, text: String(i) }));

describe('labels at the ends of curves', () => {
  it('are left where they are when nothing collides', () => {
    expect(spread(at(10, 50), 16, 0, 100).map((l) => l.y)).toEqual([10, 50]);
  });

  it('are moved apart, in order, when curves end together', () => {
    const ys = spread(at(50, 50, 50), 16, 0, 100).map((l) => l.y);
    expect(ys).toEqual([50, 66, 82]);
  });

  it('stay above the bottom edge', () => {
    const ys = spread(at(99, 98, 97), 16, 0, 100).map((l) => l.y);
    expect(ys).toEqual([68, 84, 100]);
  });

  it('keep their own names', () => {
    expect(
      spread(
        [
          { y: 90, text: 'low' },
          { y: 10, text: 'high' },
        ],
        16,
        0,
        100,
      ).map((l) => l.text),
    ).toEqual(['high', 'low']);
  });
});
