import { ASSUMED_WEIGHING, pilesOf, sharesOfPile } from '../../calibrate/swatch-set/piles.ts';
import type { SwatchSet, Weighing } from '../../calibrate/swatch-set/schema.ts';
import { choleskyInPlace, inverseFromCholesky } from '../linear/cholesky.ts';
import { type NoiseModel, meanVariance } from '../observe/reading-noise.ts';
import { readingOf } from '../observe/response-rows.ts';
import type { DoubtOfMixture } from './doubt-space.ts';

export type MeasurementKind = 'repeat' | 'tint' | 'drawdown' | 'check';

/** Something that could be read next. */
export interface Measurement {
  readonly kind: MeasurementKind;
  readonly masses: Readonly<Record<string, number>>;
  /** Spots read on it already; 0 for a film not painted yet. */
  readonly before: number;
  /** Spots to be read. */
  readonly readings: number;
}

/**
 * What the readings of a measurement add to the information: R^-1 of its channels; of a film that was read before, what
 * more readings of it add beyond those. R holds the noise of the mean, the weighing of the pile and what the equations
 * miss about it, which no number of readings lessens.
 */
export function informationOf(
  measurement: Measurement,
  doubt: DoubtOfMixture,
  rows: readonly Float64Array[],
  noise: NoiseModel,
  weighing: Weighing = ASSUMED_WEIGHING,
): Float64Array {
  const beyondNoise = [...doubt.afresh, ...weighingColumns(measurement.masses, doubt, weighing)];
  const columns = beyondNoise.map((c) => readingOf(rows, c));
  const reading = readingOf(rows, doubt.measured);
  const n = rows.length;
  const weight = (repeats: number): Float64Array => {
    const C = new Float64Array(n * n);
    for (let i = 0; i < n; i++) C[i * n + i] = meanVariance(noise, reading[i]!, repeats);
    for (const u of columns) {
      for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) C[i * n + j]! += u[i]! * u[j]!;
    }
    choleskyInPlace(C, n);
    return inverseFromCholesky(C, n);
  };
  const { before, readings } = measurement;
  const after = weight(before + readings);
  if (before === 0) return after;
  const already = weight(before);
  return after.map((w, i) => w - already[i]!);
}

/** How the reflectance moves with each weighing error of the pile, one standard deviation. */
function weighingColumns(
  masses: Readonly<Record<string, number>>,
  doubt: DoubtOfMixture,
  weighing: Weighing,
): Float64Array[] {
  const tubes: SwatchSet['tubes'] = Object.keys(masses).map((id) => ({ id }));
  const piles = pilesOf(
    { tubes, swatches: [], checks: [{ id: 'next', masses: { ...masses }, film: 'opaque' }] },
    weighing,
  );
  return sharesOfPile(piles, 0, new Float64Array(piles.errorCount)).slopes.map((slope) => {
    const column = new Float64Array(doubt.measured.length);
    tubes.forEach(({ id }, t) =>
      doubt.byShare.get(id)?.forEach((d, i) => {
        column[i]! += slope[t]! * d;
      }),
    );
    return column;
  });
}
