import { parseHeadNumber, parseNaturalNumber, parsePlainNumber } from './number.ts';
import { say } from '../sentences.ts';

/** The frame's flag bits (protocol section 4). */
export const FLAG_DIGITAL_SATURATION = 1;
export const FLAG_ANALOGUE_SATURATION = 2;
export const FLAG_LAMP_OFF = 4;
export const FLAG_SETTLING = 8;
export const FLAG_LIGHT_CHANGED = 16;
const KNOWN_FLAGS = 31;

/** Frame numbers run from 1 to here and begin again at 1. */
export const LAST_FRAME_NUMBER = 65_535;

/** One channel's count, or why there is none. */
export type Count = number | 'over-range' | 'under-range' | 'not-a-number';

/** One frame as the head sent it: raw counts and the settings they were taken with. */
export interface Frame {
  /** 1..65535, one more for each frame taken. */
  readonly frame: number;
  /** Sum of the flag bits. */
  readonly flags: number;
  /** Nominal gain multiplier. */
  readonly gain: number;
  /** Integration time of one pass, s. */
  readonly apertureS: number;
  /** Whether the lamp was on. */
  readonly lamp: boolean;
  /** Temperature, K; `undefined` when the head has no sensor. */
  readonly kelvin: number | undefined;
  readonly counts: readonly Count[];
}

export type FrameReading =
  { readonly ok: true; readonly frame: Frame } | { readonly ok: false; readonly why: string };

const SETTINGS_FIELDS = 7;

/**
 * Parses `<frame>,<flags>,<gain>,<aperture_s>,<lamp>,<kelvin>,<n>,<c1>,...,<cn>` without its checksum field.
 * Every field is held to its type and range: a frame that is odd in any way is no frame.
 * @param channels how many counts the head's catalogue promises
 */
export function parseFrame(text: string, channels: number): FrameReading {
  const fields = text.split(',');
  if (fields.length !== SETTINGS_FIELDS + channels) {
    return refuse(`${fields.length} fields, ${SETTINGS_FIELDS + channels} wanted`);
  }
  const [number, flagSum, gainField, apertureField, lampField, kelvinField, n] = fields as [
    string,
    ...string[],
  ];
  const frame = parseNaturalNumber(number);
  if (frame === undefined || frame < 1 || frame > LAST_FRAME_NUMBER)
    return refuse(say('frame-number', { seen: String(number) }));
  const flags = parseNaturalNumber(flagSum ?? '');
  if (flags === undefined || flags > KNOWN_FLAGS) return refuse(say('flags', { seen: String(flagSum) }));
  const gain = parsePlainNumber(gainField ?? '');
  if (gain === undefined || gain <= 0) return refuse(say('gain-field', { seen: String(gainField) }));
  const apertureS = parsePlainNumber(apertureField ?? '');
  if (apertureS === undefined || apertureS <= 0 || apertureS > 600)
    return refuse(say('aperture-field', { seen: String(apertureField) }));
  if (lampField !== '0' && lampField !== '1') return refuse(say('lamp-field', { seen: String(lampField) }));
  const lamp = lampField === '1';
  if (lamp === ((flags & FLAG_LAMP_OFF) !== 0))
    return refuse(say('lamp-flags', { lamp: String(lampField), flags }));
  const temperature = parseHeadNumber(kelvinField ?? '');
  if (
    temperature !== 'not-a-number' &&
    !(typeof temperature === 'number' && temperature > 150 && temperature < 500)
  ) {
    return refuse(say('temperature', { seen: String(kelvinField) }));
  }
  if (parseNaturalNumber(n ?? '') !== channels)
    return refuse(say('count-of-counts', { seen: String(n), wanted: channels }));
  const counts: Count[] = [];
  for (const field of fields.slice(SETTINGS_FIELDS)) {
    const count = parseHeadNumber(field);
    if (count === undefined || (typeof count === 'number' && count < 0))
      return refuse(say('count', { seen: String(field) }));
    counts.push(count);
  }
  const kelvin = temperature === 'not-a-number' ? undefined : temperature;
  return { ok: true, frame: { frame, flags, gain, apertureS, lamp, kelvin, counts } };
}

function refuse(why: string): FrameReading {
  return { ok: false, why };
}

/** The number of the frame after this one. */
export function nextFrameNumber(frame: number, steps = 1): number {
  return ((frame - 1 + steps) % LAST_FRAME_NUMBER) + 1;
}
