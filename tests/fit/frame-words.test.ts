import { describe, expect, it } from 'vitest';
import { fitPalette } from '../../src/fit/fit-palette.ts';
import { frameWords } from '../../src/fit/frame-words.ts';
import { transportSurfaceFor } from '../../src/fit/optics/surface.ts';
import { inventedSet } from './invented-set.ts';

describe('what was found from all tubes together', () => {
  const surface = transportSurfaceFor('45/0');

  it('says nothing of what was assumed', () => {
    expect(frameWords({ surface })).toBeUndefined();
    expect(frameWords({ surface, crowding: 0.1 }, {})).toBeUndefined();
    expect(frameWords({ surface, crowding: 0, frameDoubt: { crowding: [0, 0] } })).toBeUndefined();
  });

  it('gives each constant with its standard deviation', () => {
    const words = frameWords(
      { surface: { k2: 0.5, haze: 0.01 }, crowding: 0.12, frameDoubt: { crowding: [0.03, 0.04] } },
      { k2: 0.02, haze: 0.001 },
    );
    expect(words).toContain('0.50 give or take 0.02');
    expect(words).toContain('0.0100 give or take 0.0010');
    // sqrt(0.03^2 + 0.04^2) = 0.05
    expect(words).toContain('12 % more spread thin than crowded in its masstone, give or take 5 %');
  });

  it('is said of a fit, the white of which crowds more the more it was made to', () => {
    const found = [0, 0.15].map((crowding) => {
      const { palette, surfaceSds } = fitPalette(inventedSet(7, { crowding }), { leaveOneOut: false });
      return Number(/scatters (-?\d+) % more/.exec(frameWords(palette, surfaceSds)!)![1]);
    });
    expect(found[1]! - found[0]!).toBeGreaterThan(7);
    expect(found[1]! - found[0]!).toBeLessThan(23);
  });
});
