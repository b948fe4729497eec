/**
 * From the head's raw counts to signals that can be compared: basic counts = raw / (gain x integration time in ms),
 * the sensor maker's own definition, less the dark taken with the same settings. Raw counts stay with the reading, so
 * everything here can be worked out again.
 */
import { ReadingRefused } from '../refusal.ts';
import { say } from './sentences.ts';

/** One frame of raw counts with the settings it was taken with; a head's reading has these members. */
export interface CountFrame {
  readonly counts: readonly number[];
  readonly gain: number;
  /** Integration time of one pass, s. */
  readonly apertureS: number;
  /** Lamp on: `false` for a dark. */
  readonly lamp: boolean;
}

type Settings = Pick<CountFrame, 'gain' | 'apertureS'>;

/** A head as far as counts go. */
export interface CountingHead {
  /** Channel names, in the order of the counts. */
  readonly channels: readonly string[];
  /** Counts at which a channel is full. */
  readonly fullScale: number;
}

/** Lamp on and lamp off on the same thing, one after the other. */
export interface Exposure {
  readonly light: CountFrame;
  readonly dark: CountFrame;
}

/** Basic counts, per gain and ms. Nothing is checked. */
export function basicCounts(frame: CountFrame): Float64Array {
  const scale = frame.gain * frame.apertureS * 1000;
  return Float64Array.from(frame.counts, (c) => c / scale);
}

/**
 * Holds a frame to the head: as many counts as channels, every one a number, none full.
 * @throws ReadingRefused `channels-differ`, `not-a-number`, `saturated`
 */
export function holdToHead(frame: CountFrame, head: CountingHead): void {
  const { channels, fullScale } = head;
  if (frame.counts.length !== channels.length) {
    throw new ReadingRefused(
      'channels-differ',
      say('frame-channels', { counts: frame.counts.length, channels: channels.length }),
    );
  }
  const odd = channels.filter((_, i) => !Number.isFinite(frame.counts[i]));
  if (odd.length > 0) {
    throw new ReadingRefused('not-a-number', say('no-count', { channels: odd.join(', ') }), odd);
  }
  const full = channels.filter((_, i) => frame.counts[i]! >= fullScale);
  if (full.length > 0) {
    throw new ReadingRefused(
      'saturated',
      say('full', { channels: full.join(', '), are: full.length > 1 ? 'are' : 'is', fullScale }),
      full,
    );
  }
}

/** @throws ReadingRefused `settings-differ` when two frames were taken with different gain or aperture */
export function holdToSameSettings(one: Settings, two: Settings, what: string): void {
  if (one.gain === two.gain && Math.abs(one.apertureS - two.apertureS) <= 1e-4 * one.apertureS) return;
  const words = (f: Settings): string =>
    say('settings', { gain: f.gain, ms: (f.apertureS * 1000).toFixed(1) });
  throw new ReadingRefused(
    'settings-differ',
    say('settings-differ', { what, taken: words(two), reading: words(one) }),
  );
}

/**
 * Dark-subtracted basic counts of one exposure; may be a little below zero on a black.
 * @throws ReadingRefused as above, and `lamp-state` when the lamp was not on for the light and off for the dark
 */
export function signalOf(exposure: Exposure, head: CountingHead): Float64Array {
  const { light, dark } = exposure;
  holdToHead(light, head);
  holdToHead(dark, head);
  holdToSameSettings(light, dark, say('the-dark'));
  if (!light.lamp || dark.lamp) {
    throw new ReadingRefused(
      'lamp-state',
      say('lamp-state', { how: light.lamp ? say('on-for-dark') : say('off-for-reading') }),
    );
  }
  const D = basicCounts(dark);
  return basicCounts(light).map((c, i) => c - D[i]!);
}
