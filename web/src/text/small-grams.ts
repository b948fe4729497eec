import { num } from './numbers.ts';

/** Grams to two decimals; what is there but rounds to nothing is "under 0.01 g", never "0.00 g". */
export function smallGrams(grams: number): string {
  return grams > 0 && grams < 0.005 ? `< ${num(0.01, 2)} g` : `${num(grams, 2)} g`;
}
