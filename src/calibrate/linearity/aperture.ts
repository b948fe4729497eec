/**
 * Linearity by time: the white at t, t/2, t/4, t/8 has the same basic counts when count follows time.
 */
import { APERTURE_LINEARITY_LIMIT } from '../limits.ts';
import { perCent } from '../per-cent.ts';
import { ReadingRefused } from '../refusal.ts';
import { type HeadTest, worstChannel } from './superposition.ts';
import { say } from './sentences.ts';

/** One white at one aperture: dark-subtracted basic counts per channel. */
export interface ApertureReading {
  readonly apertureS: number;
  readonly signal: ArrayLike<number>;
}

/**
 * Each aperture's basic counts against the longest one's, to 0.5 %.
 * @throws ReadingRefused `too-few` below two apertures
 */
export function apertureLinearity(
  readings: readonly ApertureReading[],
  channels: readonly string[],
): HeadTest {
  const sorted = readings.toSorted((one, two) => two.apertureS - one.apertureS);
  const longest = sorted[0];
  if (!longest || sorted.length < 2 || sorted[1]!.apertureS === longest.apertureS) {
    throw new ReadingRefused('too-few', say('apertures-needed'));
  }
  let worst = 0;
  let channel = channels[0] ?? say('channel-one');
  let at = longest.apertureS;
  for (const reading of sorted.slice(1)) {
    const departures = channels.map((_, i) => reading.signal[i]! / longest.signal[i]! - 1);
    const [w, name] = worstChannel(departures, channels);
    if (Math.abs(w) > Math.abs(worst)) [worst, channel, at] = [w, name, reading.apertureS];
  }
  const passed = Math.abs(worst) <= APERTURE_LINEARITY_LIMIT;
  const seen = say('aperture-seen', {
    channel,
    by: perCent(worst),
    way: worst < 0 ? 'less' : 'more',
    ms: (at * 1000).toFixed(1),
  });
  return {
    passed,
    worst,
    channel,
    sentence: passed
      ? say('aperture-good', { seen, allowed: perCent(APERTURE_LINEARITY_LIMIT) })
      : say('aperture-bad', {
          seen,
          ms: (longest.apertureS * 1000).toFixed(1),
          allowed: perCent(APERTURE_LINEARITY_LIMIT),
        }),
  };
}
