/**
 * A reading through an instrument of a few bands as a wanted colour: the mix of the palette's own tubes that would read
 * so, found in the space of the reading, and what it leaves over put back as smoothly as the bands allow. Whatever
 * recipes are then compared with this spectrum are compared with what was read, never with a guess made beforehand.
 */
import { GRID_SIZE, type Spectrum } from '../../colour/grid.ts';
import { gridEstimator } from '../../fit/observe/grid-estimate.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import { extraWhite, extraWhiteSlopes, sumsAt } from '../crowding.ts';
import { MixProblem } from '../problem.ts';
import { type DescentProblem, descent } from '../search/descent.ts';
import { type TubeSet, tubeSet } from '../tube-set.ts';
import { reflectanceOfParts } from './recipe.ts';
import { say } from '../sentences.ts';

/** What a reading is and how far to trust it. */
export interface InstrumentReading {
  /** One number per channel, reflectance factor or fraction of the perfect diffuser. */
  readonly values: ArrayLike<number>;
  /** One row of 36 numbers per channel, each summing to 1: reading = rows times reflectance (fit's responseRows). */
  readonly rows: readonly ArrayLike<number>[];
  /** Standard deviation of a channel. @default 0.002 */
  readonly sigma?: number;
}

export interface SpectrumOfReading {
  /** Reflectance on the grid that reads as given. */
  readonly spectrum: Spectrum;
  /** Root mean square of (reading of the nearest mix - reading) over sigma; above about 2 no mix of the tubes reads so. */
  readonly misfit: number;
}

const SIGMA = 0.002;

function checked(reading: InstrumentReading): Float64Array {
  const { values, rows } = reading;
  if (rows.length === 0 || values.length !== rows.length) {
    throw new MixProblem(say('reading-size', { numbers: values.length, channels: rows.length }));
  }
  rows.forEach((row, k) => {
    if (row.length !== GRID_SIZE) {
      throw new MixProblem(say('channel-weights', { channel: k + 1, weights: row.length, grid: GRID_SIZE }));
    }
    const v = values[k]!;
    if (!(Number.isFinite(v) && v > -0.05 && v < 1.5)) {
      throw new MixProblem(say('channel-reads', { channel: k + 1, value: v }));
    }
  });
  return Float64Array.from(values);
}

/** Squared distance of a mix's reading from the reading, as a problem in amounts of all tubes. */
function readingProblem(
  set: TubeSet,
  rows: readonly ArrayLike<number>[],
  y: Float64Array,
  sigma: number,
): DescentProblem {
  const n = set.ids.length;
  const all = Array.from({ length: n }, (_, t) => t);
  const more = new Float64Array(n);
  const residuals = (R: Float64Array): number[] =>
    rows.map((row, k) => {
      let s = -y[k]!;
      for (let i = 0; i < GRID_SIZE; i++) s += row[i]! * R[i]!;
      return s / sigma;
    });
  return {
    cost: (x) => residuals(reflectanceOfParts(set, all, x)).reduce((s, r) => s + r * r, 0),
    model(x, slope, A) {
      const { gain, k2 } = set.surface;
      const R = reflectanceOfParts(set, all, x);
      const extra = extraWhite(set, all, x);
      extraWhiteSlopes(set, all, x, more);
      const J = rows.map(() => new Float64Array(n));
      for (let i = 0; i < GRID_SIZE; i++) {
        const { K, S } = sumsAt(set, all, x, i, extra);
        const whiteS = set.crowding?.whiteS[i] ?? 0;
        const root = Math.sqrt(K * (K + 2 * S));
        const E = K + (1 - k2) * S + root;
        const bySlope = (-gain * S * (1 + (K + S) / root)) / (E * E);
        for (let t = 0; t < n; t++) {
          const d =
            bySlope * (set.K[t * GRID_SIZE + i]! - (K / S) * (set.S[t * GRID_SIZE + i]! + more[t]! * whiteS));
          rows.forEach((row, k) => (J[k]![t]! += (row[i]! * d) / sigma));
        }
      }
      const r = residuals(R);
      for (let t = 0; t < n; t++) {
        slope[t] = 2 * r.reduce((s, e, k) => s + e * J[k]![t]!, 0);
        for (let q = 0; q < n; q++) A[t * n + q] = 2 * J.reduce((s, j) => s + j[t]! * j[q]!, 0);
      }
      return r.reduce((s, e) => s + e * e, 0);
    },
  };
}

/**
 * The spectrum a reading stands for, under the palette's geometry.
 * @throws MixProblem when channels and numbers do not agree or a number is no reflectance.
 */
export function spectrumOfReading(palette: MixingPalette, reading: InstrumentReading): SpectrumOfReading {
  const y = checked(reading);
  const { rows, sigma = SIGMA } = reading;
  const set = tubeSet(palette);
  const n = set.ids.length;
  const problem = readingProblem(set, rows, y, sigma);
  const solver = descent(n);
  let best = { x: new Float64Array(n), cost: Infinity };
  // From even amounts, and from each tube leading.
  for (let lead = -1; lead < n; lead++) {
    const x = Float64Array.from({ length: n }, (_, t) => (t === lead ? 3 : 1 / n));
    const cost = solver.solve(problem, x, n, { maxIterations: 60, reached: 1e-6 });
    if (cost < best.cost) best = { x, cost };
  }
  const R = reflectanceOfParts(set, [...set.ids.keys()], best.x);
  const left = rows.map((row, k) => {
    let s = y[k]!;
    for (let i = 0; i < GRID_SIZE; i++) s -= row[i]! * R[i]!;
    return s;
  });
  const put = gridEstimator(rows.map((row) => Float64Array.from(row)))(left);
  return {
    spectrum: R.map((r, i) => Math.min(1.2, Math.max(0, r + put[i]!))),
    misfit: Math.sqrt(best.cost / rows.length),
  };
}
