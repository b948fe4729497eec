import { DeviceFault } from '../fault.ts';
import { parsePlainNumber } from '../framing/number.ts';
import type { Conversation } from '../scpi/ask.ts';
import { command } from '../scpi/error-queue.ts';
import { say } from '../sentences.ts';

/** How the head takes a reading, as read back from it. */
export interface HeadSettings {
  /** Nominal gain multiplier. */
  readonly gain: number;
  /** Integration time of one pass, s. */
  readonly apertureS: number;
  /** Frames averaged inside the head. */
  readonly averages: number;
  /** Passes one frame needs. */
  readonly passes: number;
  /** Full scale of a channel at this aperture, counts. */
  readonly fullScale: number;
}

/** What may be set. */
export interface HeadLimits {
  /** The gains there are, ascending. */
  readonly gains: readonly number[];
  readonly apertureMinS: number;
  readonly apertureMaxS: number;
}

export interface WantedSettings {
  readonly gain?: number;
  readonly apertureS?: number;
  readonly averages?: number;
}

const ASK_SETTINGS = 'INP:GAIN?;:SENS:APER?;:SENS:AVER:COUN?;:SENS:PASS?;:SENS:RANG?';
const MOST_AVERAGES = 1024;
/** A frame may take its passes and this long more (protocol section 8), with time to send each count. */
const FRAME_SLACK_MS = 1000;
const COUNT_MS = 10;

export function readSettings(talk: Conversation): Promise<HeadSettings> {
  return talk.ask({ send: ASK_SETTINGS, read: parseSettings });
}

function parseSettings(answer: string): HeadSettings {
  const units = answer.split(';');
  const numbers = units.map((unit) => parsePlainNumber(unit));
  const [gain, apertureS, averages, passes, fullScale] = numbers;
  const all = [gain, apertureS, averages, passes, fullScale];
  if (units.length !== 5 || !all.every((x): x is number => x !== undefined && x > 0)) {
    throw new DeviceFault('frame', {
      asked: say('its-settings'),
      seen: say('five-settings', { seen: answer }),
    });
  }
  const [g, t, n, p, full] = all as [number, number, number, number, number];
  return { gain: g, apertureS: t, averages: n, passes: p, fullScale: full };
}

export async function readLimits(talk: Conversation): Promise<HeadLimits> {
  const gains = await talk.ask({ send: 'INP:GAIN:CAT?', read: (answer) => positives(answer.split(',')) });
  const ends = await talk.ask({
    send: 'SENS:APER? MIN;:SENS:APER? MAX',
    read: (answer) => positives(answer.split(';'), 2),
  });
  const [apertureMinS, apertureMaxS] = ends as [number, number];
  return { gains: gains.toSorted((a, b) => a - b), apertureMinS, apertureMaxS };
}

function positives(fields: readonly string[], count?: number): number[] {
  const numbers = fields.map((field) => parsePlainNumber(field));
  if (
    (count !== undefined && fields.length !== count) ||
    !numbers.every((x): x is number => x !== undefined && x > 0)
  ) {
    throw new DeviceFault('frame', { asked: say('what-may-be-set'), seen: `"${fields.join(',')}"` });
  }
  return numbers;
}

/**
 * Sets what is wanted, reads all back, and holds the head to it: the gain exactly, the aperture to what the head can do.
 * @throws DeviceFault `out-of-range` before anything is sent; `refused`, `settings`
 */
export async function applySettings(
  talk: Conversation,
  wanted: WantedSettings,
  limits: HeadLimits,
): Promise<HeadSettings> {
  checkWanted(wanted, limits);
  const { gain, apertureS, averages } = wanted;
  if (gain !== undefined) await command(talk, `INP:GAIN ${gain}`, limits.gains.join(', '));
  if (apertureS !== undefined) await command(talk, `SENS:APER ${apertureS}`, apertureWords(limits));
  if (averages !== undefined) await command(talk, `SENS:AVER:COUN ${averages}`);
  const settings = await readSettings(talk);
  const wrong =
    (gain !== undefined && settings.gain !== gain && say('gain', { gain: settings.gain })) ||
    (apertureS !== undefined &&
      !near(settings.apertureS, apertureS, 0.05) &&
      say('aperture', { seconds: settings.apertureS })) ||
    (averages !== undefined && settings.averages !== averages && `${settings.averages} averages`);
  if (wrong) {
    throw new DeviceFault('settings', { seen: wrong, allowed: JSON.stringify(wanted).replaceAll('"', '') });
  }
  return settings;
}

function checkWanted({ gain, apertureS, averages }: WantedSettings, limits: HeadLimits): void {
  if (gain !== undefined && !limits.gains.includes(gain)) {
    throw new DeviceFault('out-of-range', { seen: say('gain', { gain }), allowed: limits.gains.join(', ') });
  }
  if (apertureS !== undefined && !(apertureS >= limits.apertureMinS && apertureS <= limits.apertureMaxS)) {
    throw new DeviceFault('out-of-range', {
      seen: say('aperture', { seconds: apertureS }),
      allowed: apertureWords(limits),
    });
  }
  if (averages !== undefined && !(Number.isInteger(averages) && averages >= 1 && averages <= MOST_AVERAGES)) {
    throw new DeviceFault('out-of-range', {
      seen: say('averages', { count: averages }),
      allowed: say('one-to', { most: MOST_AVERAGES }),
    });
  }
}

function apertureWords(limits: HeadLimits): string {
  return say('from-to', { low: limits.apertureMinS, high: limits.apertureMaxS });
}

/** Equal within a share of the second: a head rounds an aperture to its own clock. */
export function near(a: number, b: number, share: number): boolean {
  return Math.abs(a - b) <= share * Math.abs(b);
}

/** Time limit of one frame, ms. */
export function frameTimeoutMs(settings: HeadSettings, channels: number): number {
  const exposureMs = settings.passes * settings.apertureS * settings.averages * 1000;
  return exposureMs + FRAME_SLACK_MS + COUNT_MS * channels;
}
