import type { SwatchSet } from '../../calibrate/swatch-set/schema.ts';

/** Noise of one reading: sigma^2 = sigma0^2 + (relative R)^2, reflectance factor. */
export interface NoiseModel {
  readonly sigma: number;
  readonly relative: number;
}

/** Noise of one reading taken where nothing was said and nothing was repeated. Common practice, no source. */
export const ASSUMED_NOISE = { sigma: 0.002, relative: 0.005 };
/** No instrument's mean is trusted beyond this, reflectance factor. */
const LEAST_SIGMA = 1e-5;

/**
 * Noise of one reading, sigma^2 = sigma0^2 + (relative R)^2: as given, else from the scatter of repeats (least squares
 * of the variances on R^2, weighted by their own errors), else assumed.
 */
export function readingNoise(set: SwatchSet): NoiseModel & { readonly estimated: boolean } {
  if (set.noise && (set.noise.sigma !== undefined || set.noise.relative !== undefined)) {
    return { sigma: set.noise.sigma ?? 0, relative: set.noise.relative ?? 0, estimated: false };
  }
  const points: { r2: number; variance: number; freedom: number }[] = [];
  for (const { readings } of set.swatches) {
    if (readings.length < 2) continue;
    for (let c = 0; c < readings[0]!.length; c++) {
      const mean = readings.reduce((a, r) => a + r[c]!, 0) / readings.length;
      const square = readings.reduce((a, r) => a + (r[c]! - mean) ** 2, 0);
      points.push({
        r2: mean * mean,
        variance: square / (readings.length - 1),
        freedom: readings.length - 1,
      });
    }
  }
  if (points.length < 20) return { ...ASSUMED_NOISE, estimated: false };
  let sigma2 = points.reduce((a, p) => a + p.variance, 0) / points.length;
  let relative2 = 0;
  for (let pass = 0; pass < 20; pass++) {
    let [a, b, c, d, e] = [0, 0, 0, 0, 0];
    for (const { r2, variance, freedom } of points) {
      const w = freedom / (sigma2 + relative2 * r2 + LEAST_SIGMA ** 2) ** 2;
      a += w;
      b += w * r2;
      c += w * r2 * r2;
      d += w * variance;
      e += w * variance * r2;
    }
    const det = a * c - b * b;
    sigma2 = det > 0 ? (c * d - b * e) / det : d / a;
    relative2 = det > 0 ? (a * e - b * d) / det : 0;
    if (relative2 < 0) [sigma2, relative2] = [d / a, 0];
    if (sigma2 < LEAST_SIGMA ** 2) [sigma2, relative2] = [LEAST_SIGMA ** 2, c > 0 ? Math.max(0, e / c) : 0];
  }
  return { sigma: Math.sqrt(sigma2), relative: Math.sqrt(relative2), estimated: true };
}

/** Variance of the mean of `repeats` readings near `value`. */
export function meanVariance(noise: NoiseModel, value: number, repeats: number): number {
  return (noise.sigma ** 2 + (noise.relative * value) ** 2 + LEAST_SIGMA ** 2) / repeats;
}

/**
 * Whether the instrument reports nothing below zero: some reading is exactly 0 and none is negative. The mean of such
 * readings is more than the truth, and the fit predicts what would be reported rather than clipping its own numbers.
 */
export function clipsAtZero(set: SwatchSet): boolean {
  let zero = false;
  for (const { readings } of set.swatches) {
    for (const reading of readings) {
      for (const v of reading) {
        if (v < 0) return false;
        zero ||= v === 0;
      }
    }
  }
  return zero;
}
