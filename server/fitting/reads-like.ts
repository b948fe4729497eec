import { rungName } from '../../src/calibrate/ladder/rung-name.ts';
import { say } from '../api/sentences/fitting.ts';

/** Below this |ln ratio error| two ratios are called the same. Common practice, no source. */
const SAME = 0.05;

/**
 * "reads like 1:3.4, not 1:4" for a tint whose readings call for another ratio than was weighed; null when they agree.
 * @param share weighed share of the tube, 0..1
 * @param lnRatioError ln of (ratio it reads like / ratio weighed), ratio = paint / white
 */
export function readsLike(share: number, lnRatioError: number): string | null {
  if (!(share > 0 && share < 1) || Math.abs(lnRatioError) < SAME) return null;
  const weighed = (1 - share) / share;
  const like = weighed * Math.exp(-lnRatioError);
  const name = (parts: number): string => rungName(Number(parts.toPrecision(2)));
  return name(like) === name(weighed)
    ? null
    : say('reads-like', { like: name(like), weighed: name(weighed) });
}
