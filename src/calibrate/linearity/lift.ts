/** How much a reading changes when the head is lifted: shims of known height under it, slope by least squares. */
import { LIFT_LIMIT_PER_TENTH_MM } from '../limits.ts';
import { perCent } from '../per-cent.ts';
import { ReadingRefused } from '../refusal.ts';
import { type HeadTest, worstChannel } from './superposition.ts';
import { say } from './sentences.ts';

export interface LiftReading {
  readonly shimMm: number;
  /** Dark-subtracted basic counts, or reflectance, per channel. */
  readonly signal: ArrayLike<number>;
}

/**
 * Relative change per 0.1 mm, against 0.5 %.
 * @throws ReadingRefused `too-few` when there are not two heights
 */
export function liftTest(readings: readonly LiftReading[], channels: readonly string[]): HeadTest {
  if (new Set(readings.map((r) => r.shimMm)).size < 2) {
    throw new ReadingRefused('too-few', say('heights-needed'));
  }
  const mean = readings.reduce((sum, r) => sum + r.shimMm, 0) / readings.length;
  const spread = readings.reduce((sum, r) => sum + (r.shimMm - mean) ** 2, 0);
  const slopes = channels.map((_, i) => {
    const level = readings.reduce((sum, r) => sum + r.signal[i]!, 0) / readings.length;
    const top = readings.reduce((sum, r) => sum + (r.shimMm - mean) * r.signal[i]!, 0);
    return (0.1 * top) / spread / level;
  });
  const [worst, channel] = worstChannel(slopes, channels);
  const passed = Math.abs(worst) <= LIFT_LIMIT_PER_TENTH_MM;
  const seen = say('lift-seen', { channel, by: perCent(worst) });
  return {
    passed,
    worst,
    channel,
    sentence: passed
      ? say('lift-good', { seen, allowed: perCent(LIFT_LIMIT_PER_TENTH_MM) })
      : say('lift-bad', { seen, allowed: perCent(LIFT_LIMIT_PER_TENTH_MM) }),
  };
}
