import { DeviceFault } from '../fault.ts';
import {
  FLAG_ANALOGUE_SATURATION,
  FLAG_DIGITAL_SATURATION,
  FLAG_LIGHT_CHANGED,
  FLAG_SETTLING,
  parseFrame,
} from '../framing/frame.ts';
import type { Frame } from '../framing/frame.ts';
import type { Channel } from './channels.ts';
import type { FrameNumbers } from './frame-numbers.ts';
import { near } from './settings.ts';
import type { HeadSettings } from './settings.ts';
import { say } from '../sentences.ts';

/** One accepted frame: raw counts only, in the order of the head's channels. No calibration is in it. */
export interface HeadReading {
  readonly frame: number;
  readonly flags: number;
  readonly gain: number;
  /** Integration time of one pass, s. */
  readonly apertureS: number;
  readonly averages: number;
  /** Whether the lamp was on: `false` for a dark frame. */
  readonly lamp: boolean;
  /** K; `undefined` when the head has no temperature sensor. */
  readonly kelvin: number | undefined;
  /** Counts, mean of the averaged frames. */
  readonly counts: readonly number[];
  /** The head says that its lamp is still warming up. */
  readonly settling: boolean;
  /** The light changed within the frame: do not trust it for a white. */
  readonly lightChanged: boolean;
}

/** What a frame must agree with before it is taken. */
export interface Expectation {
  readonly channels: readonly Channel[];
  readonly settings: HeadSettings;
  /** `undefined`: either will do. */
  readonly lamp: boolean | undefined;
  readonly numbers: FrameNumbers;
}

/** Aperture in a frame against the one read back: the same number printed twice. */
const SAME_APERTURE = 1e-4;

/**
 * Takes a frame or throws: wrong shape, stale or odd number, other settings or lamp than wanted, saturated, no sensor.
 * @throws DeviceFault `frame`, `stale`, `sequence`, `settings`, `saturated`, `hardware`
 */
export function takeReading(answer: string, expected: Expectation): HeadReading {
  const { channels, settings } = expected;
  // Two faces of one case: the lone 9.91E37 of a head that could take no frame.
  if (/^9\.91E\+?37$/i.test(answer)) throw new DeviceFault('hardware', { seen: say('no-frame') });
  const parsed = parseFrame(answer, channels.length);
  if (!parsed.ok) throw new DeviceFault('frame', { seen: parsed.why });
  const { frame } = parsed;
  holdToSettings(frame, settings, expected.lamp);
  const order = expected.numbers.judge(frame.frame);
  if (order === 'stale')
    throw new DeviceFault('stale', { seen: say('frame-again', { number: frame.frame }) });
  if (order === 'odd')
    throw new DeviceFault('sequence', { seen: say('frame-out-of-turn', { number: frame.frame }) });
  return {
    frame: frame.frame,
    flags: frame.flags,
    gain: frame.gain,
    apertureS: frame.apertureS,
    averages: settings.averages,
    lamp: frame.lamp,
    kelvin: frame.kelvin,
    counts: plainCounts(frame, channels),
    settling: (frame.flags & FLAG_SETTLING) !== 0,
    lightChanged: (frame.flags & FLAG_LIGHT_CHANGED) !== 0,
  };
}

function holdToSettings(frame: Frame, settings: HeadSettings, lamp: boolean | undefined): void {
  const allowed = say('gain-aperture', { gain: settings.gain, seconds: settings.apertureS });
  if (frame.gain !== settings.gain || !near(frame.apertureS, settings.apertureS, SAME_APERTURE)) {
    throw new DeviceFault('settings', {
      seen: say('gain-aperture', { gain: frame.gain, seconds: frame.apertureS }),
      allowed,
    });
  }
  if (lamp !== undefined && frame.lamp !== lamp) {
    throw new DeviceFault('frame', {
      seen: say('lamp-other-way', { lamp: frame.lamp ? 'on' : 'off' }),
    });
  }
}

function plainCounts(frame: Frame, channels: readonly Channel[]): number[] {
  const over = channels.filter((_, i) => frame.counts[i] === 'over-range').map((channel) => channel.name);
  const flagged = frame.flags & (FLAG_DIGITAL_SATURATION | FLAG_ANALOGUE_SATURATION);
  if (over.length > 0 || flagged) {
    const seen = frame.flags & FLAG_ANALOGUE_SATURATION ? say('in-analogue') : undefined;
    throw new DeviceFault('saturated', { channels: over, ...(seen === undefined ? {} : { seen }) });
  }
  return frame.counts.map((count, i) => {
    if (typeof count === 'number') return count;
    throw new DeviceFault('hardware', {
      seen: say('channel-is', { channel: String(channels[i]?.name), count: count.replaceAll('-', ' ') }),
    });
  });
}
