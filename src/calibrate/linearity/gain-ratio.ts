/**
 * Gains are nominal: the true ratio of two neighbouring steps is measured once on one scene and kept per channel.
 * Readings of one ladder still stay at one gain; the ratios are for a head that had to change it.
 */
import { GAIN_STEP_LIMIT } from '../limits.ts';
import { perCent } from '../per-cent.ts';
import { type HeadTest, worstChannel } from './superposition.ts';
import { say } from './sentences.ts';

export interface GainRatio extends HeadTest {
  readonly fromGain: number;
  readonly toGain: number;
  /** Basic counts at `toGain` over basic counts at `fromGain`, per channel: 1 where the nominal gain is true. */
  readonly ratios: Float64Array;
}

/** Dark-subtracted basic counts of one unchanged scene at two gains. */
export function gainRatio(
  from: { gain: number; signal: ArrayLike<number> },
  to: { gain: number; signal: ArrayLike<number> },
  channels: readonly string[],
): GainRatio {
  const ratios = Float64Array.from(channels, (_, i) => to.signal[i]! / from.signal[i]!);
  const [worst, channel] = worstChannel(
    ratios.map((r) => r - 1),
    channels,
  );
  const passed = Math.abs(worst) <= GAIN_STEP_LIMIT;
  const seen = say('gain-seen', { to: to.gain, from: from.gain, by: perCent(worst), channel });
  return {
    fromGain: from.gain,
    toGain: to.gain,
    ratios,
    passed,
    worst,
    channel,
    sentence: passed ? say('gain-good', { seen }) : say('gain-bad', { seen }),
  };
}

/** Basic counts taken at `toGain` as they would be at `fromGain`. */
export function atFirstGain(signal: Float64Array, ratio: GainRatio): Float64Array {
  return signal.map((s, i) => s / ratio.ratios[i]!);
}
