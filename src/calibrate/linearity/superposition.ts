/**
 * Linearity without any reference material: two lamps A and B, each alone and both together; a linear head reads
 * A + B = AB. The flux addition method: CIE 69-1987 and C. L. Sanders, J. Res. NBS 76A (1972) 437-453 [titles from
 * memory]. Signals are dark-subtracted basic counts per channel.
 */
import { SUPERPOSITION_LIMIT } from '../limits.ts';
import { perCent } from '../per-cent.ts';
import { ReadingRefused } from '../refusal.ts';
import { say } from './sentences.ts';

/** One test of the head, passed or not, with what was seen in one sentence. */
export interface HeadTest {
  readonly passed: boolean;
  /** Largest departure, as a share, and the channel that has it. */
  readonly worst: number;
  readonly channel: string;
  readonly sentence: string;
}

/** Finds the channel whose departure is largest in size. A departure that is no number counts as infinite. */
export function worstChannel(departures: ArrayLike<number>, channels: readonly string[]): [number, string] {
  let worst = 0;
  let at = 0;
  Array.from(departures).forEach((d, i) => {
    const size = Number.isNaN(d) ? Number.POSITIVE_INFINITY : d;
    if (Math.abs(size) > Math.abs(worst)) [worst, at] = [size, i];
  });
  return [worst, channels[at] ?? say('channel', { number: at + 1 })];
}

/**
 * (A + B - AB) / AB per channel against 0.3 %.
 * @throws ReadingRefused `channels-differ` when lengths differ
 */
export function superposition(
  a: ArrayLike<number>,
  b: ArrayLike<number>,
  both: ArrayLike<number>,
  channels: readonly string[],
): HeadTest {
  if (a.length !== channels.length || b.length !== channels.length || both.length !== channels.length) {
    throw new ReadingRefused('channels-differ', say('lamp-channels'));
  }
  const departures = channels.map((_, i) => (a[i]! + b[i]! - both[i]!) / both[i]!);
  const [worst, channel] = worstChannel(departures, channels);
  const passed = Math.abs(worst) <= SUPERPOSITION_LIMIT;
  const allowed = perCent(SUPERPOSITION_LIMIT);
  const seen = { by: perCent(worst), way: worst < 0 ? ('less' as const) : ('more' as const), channel };
  return {
    passed,
    worst,
    channel,
    sentence: say(passed ? 'lamps-good' : 'lamps-bad', { ...seen, allowed }),
  };
}
