import type { Check, SwatchSet } from '../../calibrate/swatch-set/schema.ts';
import {
  backwardInPlace,
  choleskyInPlace,
  forwardInPlace,
  subtractSquare,
} from '../../fit/linear/cholesky.ts';
import { cardEstimator } from '../../fit/observe/card.ts';
import { readingNoise } from '../../fit/observe/reading-noise.ts';
import { readingOf, responseRows } from '../../fit/observe/response-rows.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import { type PredictionWithCovariance, predictSlopes, predictWithCovariance } from '../../fit/predict.ts';

/** A finite film predicted at the thickness its own drawdown reads like. */
export interface CheckedFilm {
  readonly measured: Float64Array;
  /** Columns of the covariance of (truth - prediction), the fitted thickness counted. */
  readonly factor: readonly Float64Array[];
  readonly X: number;
}

/** ln thickness tried, in units of the white's scattering: a glaze to a film no card shows through. */
const LN_X_TRIED = Array.from({ length: 29 }, (_, i) => -2 + i * 0.25);
const PASSES = 6;

interface Stack {
  /** What was read (or is true), predicted, and d(predicted)/d(ln X), swatch after swatch. */
  readonly difference: Float64Array;
  readonly slope: Float64Array;
  readonly predictions: readonly PredictionWithCovariance[];
}

/**
 * Predicts one drawdown over each of its cards. The thickness is the one unknown: generalised least squares of the
 * drawdown's own readings on ln X, under the palette's doubt and the noise. With deviations e of covariance
 * C = F F^T + N and v = 1/(J^T C^-1 J), the prediction at the fitted thickness is off by (I - J v J^T C^-1) e, which is
 * the covariance handed back: what the thickness took up is not counted twice, and what it cannot mend stays.
 */
export function predictFilm(
  palette: MixingPalette,
  set: SwatchSet,
  masses: Readonly<Record<string, number>>,
  checks: readonly Check[],
): CheckedFilm[] {
  const rows = responseRows(set.instrument);
  const onGrid = cardEstimator(rows);
  const noise = readingNoise(set);
  const cards = checks.map((check) => onGrid(set.backings.find((b) => b.id === check.backing)!.reflectance));
  const targets = checks.map(({ truth, readings }) => {
    if (!truth) {
      return Float64Array.from(rows, (_, c) => readings!.reduce((a, r) => a + r[c]!, 0) / readings!.length);
    }
    return set.instrument.kind === 'spectral' ? Float64Array.from(truth) : readingOf(rows, truth);
  });
  const variances = checks.map(({ readings }, s) =>
    targets[s]!.map((v) => (noise.sigma ** 2 + (noise.relative * v) ** 2 + 1e-10) / (readings?.length ?? 1)),
  );
  const channels = rows.length;
  const size = channels * checks.length;

  const stackAt = (lnX: number): Stack => {
    const difference = new Float64Array(size);
    const slope = new Float64Array(size);
    const predictions = checks.map((_, s) => {
      const film = { X: Math.exp(lnX), backing: cards[s]! };
      const predicted = predictWithCovariance(palette, masses, film);
      const reading = readingOf(rows, predicted.measured);
      const slopes = readingOf(rows, predictSlopes(palette, masses, film).dLnX);
      for (let c = 0; c < channels; c++) {
        difference[s * channels + c] = targets[s]![c]! - reading[c]!;
        slope[s * channels + c] = slopes[c]!;
      }
      return predicted;
    });
    return { difference, slope, predictions };
  };
  const roughCost = (lnX: number): number => {
    let sum = 0;
    checks.forEach((_, s) => {
      const film = { X: Math.exp(lnX), backing: cards[s]! };
      const reading = readingOf(rows, predictSlopes(palette, masses, film).measured);
      reading.forEach((v, c) => (sum += (targets[s]![c]! - v) ** 2));
    });
    return sum;
  };

  const rough = LN_X_TRIED.map(roughCost);
  let lnX = LN_X_TRIED[rough.indexOf(Math.min(...rough))]!;
  let at = stackAt(lnX);
  let solved = gls(at, rows, variances);
  for (let pass = 0; pass < PASSES; pass++) {
    const step = Math.max(-0.5, Math.min(0.5, solved.step));
    lnX = Math.min(LN_X_TRIED.at(-1)!, Math.max(LN_X_TRIED[0]!, lnX + step));
    at = stackAt(lnX);
    solved = gls(at, rows, variances);
    if (Math.abs(step) < 1e-4) break;
  }
  const X = Math.exp(lnX);
  const dLnX = cards.map((backing) => predictSlopes(palette, masses, { X, backing }).dLnX);
  return at.predictions.map(({ measured, factor }, s): CheckedFilm => {
    // One column per source of doubt, the same source in every swatch; less what the thickness takes up of it.
    const columns = factor.map((column, k) => {
      const taken = solved.takes(k);
      return column.map((v, i) => v - dLnX[s]![i]! * taken);
    });
    const noiseSd = Math.sqrt(solved.noiseVariance);
    columns.push(dLnX[s]!.map((d) => d * noiseSd));
    return { measured, factor: columns, X };
  });
}

/** One generalised least squares step in ln X, and how much of each doubt it takes up. */
function gls(
  { difference, slope, predictions }: Stack,
  rows: readonly Float64Array[],
  variances: readonly Float64Array[],
): { step: number; takes(column: number): number; noiseVariance: number } {
  const channels = rows.length;
  const n = difference.length;
  const count = predictions[0]!.factor.length;
  const stacked = new Float64Array(count * n);
  predictions.forEach(({ factor }, s) =>
    factor.forEach((column, k) => stacked.set(readingOf(rows, column), k * n + s * channels)),
  );
  const C = new Float64Array(n * n);
  variances.forEach((v, s) => v.forEach((w, c) => (C[(s * channels + c) * (n + 1)]! -= w)));
  subtractSquare(C, stacked, count, n);
  for (let i = 0; i < C.length; i++) C[i] = -C[i]!;
  choleskyInPlace(C, n);
  // C^-1 J once: every product with it after that is one sum.
  const w = Float64Array.from(slope);
  forwardInPlace(C, n, w, 1);
  backwardInPlace(C, n, w, 1);
  const dot = (v: Float64Array): number => v.reduce((sum, x, i) => sum + x * w[i]!, 0);
  const information = dot(slope) + 1e-12;
  let noiseVariance = 0;
  variances.forEach((v, s) =>
    v.forEach((variance, c) => (noiseVariance += variance * (w[s * channels + c]! / information) ** 2)),
  );
  return {
    step: dot(difference) / information,
    takes: (column) => dot(stacked.subarray(column * n, (column + 1) * n)) / information,
    noiseVariance,
  };
}
