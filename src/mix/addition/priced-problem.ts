import type { ColourProblem } from '../search/colour-problem.ts';
import type { DescentProblem } from '../search/descent.ts';

/**
 * A colour problem whose first amount is the pile and whose others are added to it, with a price on what is added:
 * cost + price * (grams added / grams of the pile). Like the colour it is of degree 0, so amounts stay shares.
 * `gramsPer[j]`: grams in one effective part of amount j.
 */
export function pricedProblem(
  colour: ColourProblem,
  m: number,
  gramsPer: readonly number[],
  price: number,
): DescentProblem {
  const ratio = (x: Float64Array): number => {
    let added = 0;
    for (let j = 1; j < m; j++) added += x[j]! * gramsPer[j]!;
    return added / (x[0]! * gramsPer[0]!);
  };
  return {
    cost(x) {
      return x[0]! > 0 ? colour.cost(x) + price * ratio(x) : Infinity;
    },
    model(x, slope, A) {
      const cost = colour.model(x, slope, A);
      const pile = x[0]! * gramsPer[0]!;
      const r = ratio(x);
      for (let j = 1; j < m; j++) slope[j]! += (price * gramsPer[j]!) / pile;
      slope[0]! -= (price * r) / x[0]!;
      return cost + price * r;
    },
  };
}
