import { describe, expect, it } from 'vitest';
import { cautionsFor } from '../../server/views/cautions.ts';

describe('the cautions of a tube', () => {
  it('says nothing of a tube without pigments, or of pigments that call for no special care', () => {
    expect(cautionsFor([])).toEqual([]);
    expect(cautionsFor(['PB29'])).toEqual([]);
  });

  it('blames each pigment for what it may hold itself, and no other', () => {
    const [one, ...rest] = cautionsFor(['PR108', 'PB29']);
    expect(rest).toEqual([]);
    expect(one).toMatch(/^PR108: paint of this name may hold cadmium\./);
    expect(one).not.toContain('PB29');
  });

  it('gives two pigments that hold different things a caution each, and like ones a common one', () => {
    expect(cautionsFor(['PR108', 'PB28', 'PY35']).map((s) => s.split('.')[0])).toEqual([
      'PR108, PY35: paint of this name may hold cadmium',
      'PB28: paint of this name may hold cobalt',
    ]);
  });

  it('reads a code with its part, and defers to the data sheet each time', () => {
    const [one] = cautionsFor(['PY42', 'pr108:1']);
    expect(one).toMatch(/^pr108:1: .*cadmium/);
    expect(one).toMatch(/safety data sheet of your tube and local rules come first/);
  });
});
