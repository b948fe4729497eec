import { sharesOfPile } from '../../calibrate/swatch-set/piles.ts';
import { ciede2000 } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import { stateAt } from '../model/forward.ts';
import { predictGroup } from '../model/predict-group.ts';
import type { FitProblem } from '../model/problem.ts';
import { readingColour } from '../observe/reading-colour.ts';
import type { FittedSwatch, RungEvidence } from '../palette-fit.ts';
import type { Solution } from '../solve/solve-palette.ts';
import { withoutGroup } from './leave-out.ts';

export interface SwatchEvidence {
  readonly fitted: FittedSwatch;
  /** Index of its group in the problem. */
  readonly group: number;
  /** Share of each tube as weighed. */
  readonly shares: Float64Array;
  /** The rung as evidence for one tube (index in the set). */
  rung(tube: number): RungEvidence;
}

/** Predicted beside read for every swatch; `leaveOut` refits each tube once per rung. */
export function swatchEvidence(problem: FitProblem, solution: Solution, leaveOut: boolean): SwatchEvidence[] {
  const state = stateAt(problem, solution.x);
  const zero = new Float64Array(problem.piles.errorCount);
  const colourOf = readingColour(problem.rows);
  const { channels } = problem;
  return problem.groups.flatMap((group, g) => {
    const at = predictGroup(problem, state, group);
    const weighed = sharesOfPile(problem.piles, group.pile, zero).shares;
    const moved = sharesOfPile(problem.piles, group.pile, state.e).shares;
    const left = leaveOut ? withoutGroup(problem, solution, g) : null;
    const leftAt = left && predictGroup(problem, stateAt(problem, left), group);
    return group.swatches.map((observed, s): SwatchEvidence => {
      const part = (v: Float64Array): Float64Array => v.slice(s * channels, (s + 1) * channels);
      const reflectance = at.slopes[s]!.measured;
      const seen = { reflectance, reading: part(at.predicted) };
      const predicted = colourOf(seen.reading, seen);
      const mean = colourOf(observed.mean, seen);
      const fitted: FittedSwatch = {
        id: observed.swatch.id,
        masses: massesOf(problem, weighed),
        film: observed.swatch.film,
        mean: observed.mean,
        predicted: seen.reading,
        reflectance,
        deltaE00: ciede2000(predicted, mean),
      };
      const leftOut = leftAt
        ? leftOutDifference(colourOf, observed.mean, {
            reflectance: leftAt.slopes[s]!.measured,
            reading: part(leftAt.predicted),
          })
        : undefined;
      const scatter =
        observed.repeats > 1
          ? observed.swatch.readings.reduce((sum, r) => sum + ciede2000(colourOf(r, seen), mean), 0) /
            observed.repeats
          : undefined;
      return {
        fitted,
        group: g,
        shares: weighed,
        rung: (tube) => ({
          id: fitted.id,
          share: weighed[tube]!,
          deltaE00: fitted.deltaE00,
          ...(leftOut === undefined ? {} : { leftOutDeltaE00: leftOut }),
          lnRatioError: lnRatio(moved[tube]!) - lnRatio(weighed[tube]!),
          repeats: observed.repeats,
          ...(scatter === undefined ? {} : { mcdm: scatter }),
        }),
      };
    });
  });
}

type ColourOf = ReturnType<typeof readingColour>;

function leftOutDifference(colourOf: ColourOf, mean: Float64Array, seen: Parameters<ColourOf>[1]): number {
  const predicted: Lab = colourOf(seen.reading, seen);
  return ciede2000(predicted, colourOf(mean, seen));
}

/** ln c/(1-c); 0 for a masstone, which no weighing can move. */
function lnRatio(c: number): number {
  return c > 0 && c < 1 ? Math.log(c / (1 - c)) : 0;
}

function massesOf(problem: FitProblem, shares: Float64Array): Record<string, number> {
  return Object.fromEntries(
    problem.set.tubes.flatMap((tube, t) => (shares[t]! > 0 ? [[tube.id, shares[t]!] as const] : [])),
  );
}
