import { describe, expect, it } from 'vitest';
import {
  changeOf,
  recipesInOrder,
  type ReplacedRecipe,
} from '../../web/src/screens/profile/replaced-recipes.ts';

const recipe = (
  before: Record<string, number>,
  masses: Record<string, number>,
  outcome: ReplacedRecipe['outcome'] = 'kept',
): ReplacedRecipe => ({ before, masses, outcome, deltaE00: 0, sentence: '' });

const STAYS = recipe({ white: 9, old: 1 }, { white: 9, now: 1 });
const MOVES = recipe({ white: 9, old: 1 }, { white: 8, now: 2 });
const MOVES_MORE = recipe({ white: 5, old: 5 }, { white: 2, now: 8 });
const LOST = recipe({ old: 1 }, { now: 1 }, 'out of reach');

describe('recipes after a tube was replaced', () => {
  it('says nothing of none', () => {
    expect(recipesInOrder([], 'old', 'now')).toEqual({ first: [], rest: [], lost: 0, moving: 0, same: 0 });
  });

  it('takes the new tube for the old one: the same grams are no change', () => {
    expect(changeOf(STAYS, 'old', 'now')).toBe(0);
    expect(changeOf(MOVES, 'old', 'now')).toBeCloseTo(0.1, 12);
    expect(changeOf(MOVES_MORE, 'old', 'now')).toBeCloseTo(0.3, 12);
  });

  it('puts what is out of reach first, then what changes most, and folds what stays', () => {
    const { first, rest, lost, moving, same } = recipesInOrder(
      [STAYS, MOVES, LOST, MOVES_MORE],
      'old',
      'now',
    );
    expect(first).toEqual([LOST, MOVES_MORE, MOVES]);
    expect(rest).toEqual([STAYS]);
    expect([lost, moving, same]).toEqual([1, 2, 1]);
  });

  it('shows six at first where many change, and every one that is out of reach', () => {
    const many = Array.from({ length: 40 }, () => MOVES);
    expect(recipesInOrder(many, 'old', 'now').first).toHaveLength(6);
    expect(
      recipesInOrder([...many, ...Array.from({ length: 9 }, () => LOST)], 'old', 'now').first,
    ).toHaveLength(9);
  });
});
