/** What a rung is called under its tube's heading. */
import { describe, expect, it } from 'vitest';
import { ownName } from '../../web/src/screens/constants/rung-name.ts';

const tube = { id: 'deep-blue', label: 'Deep blue' };

describe('the name of a rung under its tube', () => {
  it('stays where nothing of it would be left', () => {
    expect(ownName('deep-blue', tube)).toBe('deep-blue');
    expect(ownName('', tube)).toBe('');
  });
  it('stays where it is not said twice', () => {
    expect(ownName('1:4', tube)).toBe('1:4');
    expect(ownName('the deep-blue one', tube)).toBe('the deep-blue one');
  });
  it('loses the name of its tube, by either name, and what joined the two', () => {
    expect(ownName('deep-blue-1:4', tube)).toBe('1:4');
    expect(ownName('Deep blue: masstone', tube)).toBe('masstone');
  });
});
