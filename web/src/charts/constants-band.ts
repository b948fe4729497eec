import type { ProfileTube } from '../../../src/profile/schema.ts';

/** K or S of a tube on the grid with its 95 % interval. */
export interface ConstantCurve {
  readonly value: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** The 0.975 quantile of the standard normal distribution. */
const Z95 = 1.959963984540054;

/**
 * ln K and ln S deviate by own.u + shared.v (docs/profile-format.md), so the standard deviation at a wavelength is the
 * root of the sum of squares across both factors' columns.
 */
export function constantCurve(tube: ProfileTube, which: 'K' | 'S'): ConstantCurve {
  const value = tube[which];
  const size = value.length;
  const first = which === 'K' ? 0 : size;
  const columns = [...tube.covariance.own, ...tube.covariance.shared];
  const sd = value.map((_, i) => Math.sqrt(columns.reduce((sum, c) => sum + c[first + i]! ** 2, 0)));
  return {
    value,
    low: value.map((v, i) => v * Math.exp(-Z95 * sd[i]!)),
    high: value.map((v, i) => v * Math.exp(Z95 * sd[i]!)),
  };
}
