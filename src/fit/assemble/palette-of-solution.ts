import { GRID_SIZE, flatSpectrum } from '../../colour/grid.ts';
import type { TubeConstants } from '../constants.ts';
import { misfitColumns } from '../discrepancy.ts';
import { backwardInPlace, choleskyInPlace, factorColumns, inverseFromCholesky } from '../linear/cholesky.ts';
import { type ArrowFactors, factorArrow } from '../model/arrow.ts';
import { stateAt } from '../model/forward.ts';
import type { FitProblem } from '../model/problem.ts';
import type { MixingPalette } from '../palette.ts';
import type { Solution } from '../solve/solve-palette.ts';
import { frameOfSolution, surfaceOfState } from './frame-of-solution.ts';

/** Share of each variance that the kept columns may leave out. */
const LEFT_OUT = 0.01;

const named = ({ id, label }: { readonly id: string; readonly label?: string | undefined }) => ({
  id,
  ...(label ? { label } : {}),
});

/**
 * The palette of a solution. The covariance is the inverse curvature of the cost at its minimum. What a tube owes to the
 * white is in `shared`, whose columns are driven by the white's own doubt and then by that of surface and crowding, which
 * move with them (`frameDoubt`); the rest is its own.
 */
export function paletteOfSolution(problem: FitProblem, solution: Solution): MixingPalette {
  const { layout, white, set } = problem;
  const factors = factorArrow(solution.system)!;
  const whiteSize = layout.lnS[white]! >= 0 ? 2 * GRID_SIZE : GRID_SIZE;
  const whiteColumns = factorColumns(whiteCovariance(layout.border, whiteSize, factors), whiteSize, LEFT_OUT);
  const { correlationNm } = problem.settings;
  const usual = solution.discrepancy.typical;
  const state = stateAt(problem, solution.x);
  const frame = frameOfSolution(problem, factors, state, whiteSize, whiteColumns.length);
  const borderColumns = [...whiteColumns, ...frame.columns];
  const unit = meanOf(state.S.subarray(white * GRID_SIZE, (white + 1) * GRID_SIZE));
  const shift = Math.log(unit);
  const tubes: TubeConstants[] = [];
  const spectra = (t: number): { lnK: Float64Array; lnS: Float64Array } => {
    const at = (place: number): Float64Array =>
      Float64Array.from({ length: GRID_SIZE }, (_, i) => (place < 0 ? 0 : solution.x[place + i]!) - shift);
    return { lnK: at(layout.lnK[t]!), lnS: at(layout.lnS[t]!) };
  };
  const place = (column: Float64Array, fromK: number, fromS: number): Float64Array => {
    const out = new Float64Array(2 * GRID_SIZE);
    for (let i = 0; i < GRID_SIZE; i++) {
      out[i] = column[fromK + i]!;
      if (fromS >= 0) out[GRID_SIZE + i] = column[fromS + i]!;
    }
    return out;
  };
  tubes.push({
    ...named(set.tubes[white]!),
    ...spectra(white),
    own: [],
    shared: borderColumns.map((c) => place(c, 0, whiteSize > GRID_SIZE ? GRID_SIZE : -1)),
  });
  layout.blocks.forEach((block, b) => {
    if (block.tubes.length === 0) return;
    const inverse = inverseFromCholesky(factors.L[b]!, block.size);
    const beyond = Math.sqrt(Math.max(0, solution.discrepancy.blocks[b]! ** 2 - usual ** 2));
    const answer = blockAnswer(factors, b, block.size, layout.border, borderColumns);
    for (const t of block.tubes) {
      const k = layout.lnK[t]! - block.offset;
      const own = new Float64Array((2 * GRID_SIZE) ** 2);
      // ln K and ln S of one tube stand side by side in its block.
      for (let i = 0; i < 2 * GRID_SIZE; i++) {
        for (let j = 0; j < 2 * GRID_SIZE; j++) {
          own[i * 2 * GRID_SIZE + j] = inverse[(k + i) * block.size + k + j]!;
        }
      }
      tubes.push({
        ...named(set.tubes[t]!),
        ...spectra(t),
        own: [
          ...factorColumns(own, 2 * GRID_SIZE, LEFT_OUT),
          ...misfitColumns({ sdLnKS: flatSpectrum(beyond), correlationNm }),
        ],
        shared: answer.map((c) => place(c, k, k + GRID_SIZE)),
      });
    }
  });
  const order = new Map(set.tubes.map((t, i) => [t.id, i]));
  tubes.sort((a, b) => order.get(a.id)! - order.get(b.id)!);
  return {
    tubes,
    white: set.tubes[white]!.id,
    geometry: set.instrument.geometry,
    surface: surfaceOfState(problem, state),
    discrepancy: {
      sdLnKS: flatSpectrum(usual),
      correlationNm,
      ...(solution.discrepancy.hazeFound > 0 ? { sdHaze: solution.discrepancy.hazeFound } : {}),
    },
    ...(layout.shared.crowding === undefined ? {} : { crowding: state.crowding }),
    ...(frame.doubt ? { frameDoubt: frame.doubt } : {}),
  };
}

/** Covariance of the white's constants with the surface as it is: the inverse of its part of the Schur complement. */
function whiteCovariance(border: number, size: number, factors: ArrowFactors): Float64Array {
  const P = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let v = 0;
      for (let k = 0; k <= j; k++) v += factors.border[i * border + k]! * factors.border[j * border + k]!;
      P[i * size + j] = v;
    }
  }
  choleskyInPlace(P, size);
  return inverseFromCholesky(P, size);
}

/** How a block's unknowns follow the border along each of its columns: -H_bb^-1 H_bw column. */
function blockAnswer(
  factors: ArrowFactors,
  b: number,
  size: number,
  border: number,
  borderColumns: readonly Float64Array[],
): Float64Array[] {
  return borderColumns.map((column) => {
    const v = new Float64Array(size);
    const Y = factors.Y[b]!;
    for (let k = 0; k < size; k++) {
      for (let j = 0; j < column.length; j++) v[k]! -= Y[k * border + j]! * column[j]!;
    }
    backwardInPlace(factors.L[b]!, size, v, 1);
    return v;
  });
}

function meanOf(values: Float64Array): number {
  return values.reduce((a, b) => a + b, 0) / values.length;
}
