import { describe, expect, it } from 'vitest';
import { numberPlaces } from '../../src/study/number-places.ts';

describe('where numbers are written', () => {
  it('is the middle of a square', () => {
    expect(numberPlaces(new Uint8Array(25), 5, 5, 1)).toEqual([{ x: 2, y: 2, room: 3 }]);
  });

  it('is inside its own family, the widest part of it', () => {
    const of = Uint8Array.from({ length: 9 * 9 }, (_, i) => (i % 9 < 3 ? 0 : 1));
    const [narrow, wide] = numberPlaces(of, 9, 9, 2);
    expect(narrow!.x).toBe(1);
    expect(narrow!.room).toBe(2);
    expect(wide!.x).toBeGreaterThanOrEqual(5);
    expect(wide!.room).toBe(3);
  });

  it('has no room where a family is not in the picture', () => {
    expect(numberPlaces(new Uint8Array(4), 2, 2, 2)[1]!.room).toBe(0);
  });
});
