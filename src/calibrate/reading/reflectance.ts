/**
 * Reflectance factor from dark-subtracted basic counts, with a white of known reflectance and a black trap:
 *
 *     R = Rb + (Rw - Rb) (S - B) / (W - B)
 *
 * The trap takes out the head's own flare. A linear two-point scale: nothing is clipped, so a black may read a
 * little below zero and a white a little above one; much beyond that the scale itself is wrong, and is refused.
 */
import { ReadingRefused } from '../refusal.ts';
import { HIGHEST_REFLECTANCE, LOWEST_REFLECTANCE, LOW_SIGNAL_LIMIT } from '../limits.ts';
import { type CountFrame, type CountingHead, type Exposure, holdToSameSettings, signalOf } from './counts.ts';
import { say } from './sentences.ts';

/** What a head is set on. Signals are dark-subtracted basic counts per channel. */
export interface TwoPointScale {
  readonly white: Float64Array;
  readonly trap: Float64Array;
  /** Reflectance factor of the white tile per channel. */
  readonly tile: ArrayLike<number>;
  /** Reflectance factor of the black trap, 0..0.02; 0 when left out. */
  readonly trapReflectance?: number;
  /** What white and trap were taken with; a reading taken with anything else is then refused. */
  readonly settings?: Pick<CountFrame, 'gain' | 'apertureS'>;
}

/**
 * Reflectance factor per channel.
 * @throws ReadingRefused `channels-differ`; `low-signal` when the white is hardly brighter than the trap;
 *   `implausible` when no paint reads like this
 */
export function reflectanceFromSignal(
  sample: Float64Array,
  scale: TwoPointScale,
  channels: readonly string[],
): Float64Array {
  const { white, trap, tile } = scale;
  const Rb = scale.trapReflectance ?? 0;
  const n = channels.length;
  if ([sample, white, trap, tile].some((list) => list.length !== n)) {
    throw new ReadingRefused(
      'channels-differ',
      say('channel-counts', {
        head: n,
        sample: sample.length,
        white: white.length,
        trap: trap.length,
        tile: tile.length,
      }),
    );
  }
  const dim = channels.filter((_, i) => !(white[i]! - trap[i]! > LOW_SIGNAL_LIMIT * Math.abs(white[i]!)));
  if (dim.length > 0) {
    throw new ReadingRefused(
      'low-signal',
      say('white-like-trap', { channels: dim.join(', '), s: dim.length > 1 ? '' : 's' }),
      dim,
    );
  }
  const R = sample.map((S, i) => Rb + ((tile[i]! - Rb) * (S - trap[i]!)) / (white[i]! - trap[i]!));
  holdPlausible(R, channels);
  return R;
}

function holdPlausible(R: Float64Array, channels: readonly string[]): void {
  const odd = channels.filter((_, i) => !(R[i]! >= LOWEST_REFLECTANCE && R[i]! <= HIGHEST_REFLECTANCE));
  if (odd.length === 0) return;
  const seen = R[channels.indexOf(odd[0]!)]!;
  const why = seen < 0 ? say('darker-than-trap') : say('brighter-than-white');
  throw new ReadingRefused(
    'implausible',
    say('implausible', {
      channels: odd.join(', '),
      s: odd.length > 1 ? '' : 's',
      seen: seen.toFixed(3),
      why,
    }),
    odd,
  );
}

/**
 * The whole way for one exposure: counts to reflectance factor.
 * @throws ReadingRefused any of `signalOf`'s and `reflectanceFromSignal`'s
 */
export function reflectanceFromCounts(
  exposure: Exposure,
  scale: TwoPointScale,
  head: CountingHead,
): Float64Array {
  if (scale.settings) holdToSameSettings(exposure.light, scale.settings, say('the-white'));
  return reflectanceFromSignal(signalOf(exposure, head), scale, head.channels);
}

/**
 * Refuses a white too dim to divide by: raw light minus dark under 1 % of full scale in some channel.
 * @throws ReadingRefused `low-signal`, or any of `signalOf`'s
 */
export function holdWhite(exposure: Exposure, head: CountingHead): Float64Array {
  const signal = signalOf(exposure, head);
  const { light, dark } = exposure;
  const low = head.channels.filter(
    (_, i) => light.counts[i]! - dark.counts[i]! < LOW_SIGNAL_LIMIT * head.fullScale,
  );
  if (low.length > 0) {
    throw new ReadingRefused(
      'low-signal',
      say('low-signal', { channels: low.join(', '), stay: low.length > 1 ? 'stay' : 'stays' }),
      low,
    );
  }
  return signal;
}
