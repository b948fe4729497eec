/**
 * Linearity by time: the white at t, t/2, t/4, t/8 has the same basic counts when count follows time.
 */
import { APERTURE_LINEARITY_LIMIT } from '../limits.ts';
import { perCent } from '../per-cent.ts';
import { ReadingRefused } from '../refusal.ts';
import { type HeadTest, worstChannel } from './superposition.ts';

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
    throw new ReadingRefused(
      'too-few',
      'Linearity by aperture needs the white at two apertures or more, such as t, t/2, t/4 and t/8; read them.',
    );
  }
  let worst = 0;
  let channel = channels[0] ?? 'channel 1';
  let at = longest.apertureS;
  for (const reading of sorted.slice(1)) {
    const departures = channels.map((_, i) => reading.signal[i]! / longest.signal[i]! - 1);
    const [w, name] = worstChannel(departures, channels);
    if (Math.abs(w) > Math.abs(worst)) [worst, channel, at] = [w, name, reading.apertureS];
  }
  const passed = Math.abs(worst) <= APERTURE_LINEARITY_LIMIT;
  const seen = `${channel} reads ${perCent(worst)} ${worst < 0 ? 'less' : 'more'} at ${(at * 1000).toFixed(1)} ms`;
  return {
    passed,
    worst,
    channel,
    sentence: passed
      ? `Linear in time: at most ${seen}, within ${perCent(APERTURE_LINEARITY_LIMIT)}.`
      : `${seen} than at ${(longest.apertureS * 1000).toFixed(1)} ms, and ${perCent(APERTURE_LINEARITY_LIMIT)} is allowed; keep to one aperture and look for saturation or leaking light.`,
  };
}
