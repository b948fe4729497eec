import { predictWithCovariance } from '../../../src/fit/predict.ts';
import type { MixingPalette } from '../../../src/fit/palette.ts';

/** Masses by tube id in any one unit. */
export interface PredictAsk {
  readonly masses: Readonly<Record<string, number>>;
}

/** Reflectance factor on the grid as the profile's geometry reads it, with a 95 % band. */
export interface PredictAnswer {
  readonly reflectance: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** CIEDE2000 (D65/10deg) that the truth stays under 95 times in 100. */
  readonly radius: number;
}

/** The 0.975 quantile of the standard normal distribution. */
const Z95 = 1.959963984540054;

export function predictJob(palette: MixingPalette, { masses }: PredictAsk): PredictAnswer {
  const at = predictWithCovariance(palette, masses);
  const half = at.measured.map((_, i) => Z95 * Math.sqrt(at.factor.reduce((sum, c) => sum + c[i]! ** 2, 0)));
  return {
    reflectance: at.measured,
    low: at.measured.map((r, i) => r - half[i]!),
    high: at.measured.map((r, i) => r + half[i]!),
    radius: at.labRegion.radius,
  };
}
