import { DeviceFault } from '../fault.ts';
import { splitOutsideQuotes, unquote } from '../framing/fields.ts';
import { parsePlainNumber } from '../framing/number.ts';

/** The XYZ of a tristimulus head's own factory matrix, Y = 100 for the perfect diffuser. */
export interface TristimulusReading {
  readonly XYZ: readonly [number, number, number];
  /** Degrees. */
  readonly observer: 2 | 10;
  /** `D65`, `D50`, `A`... */
  readonly illuminant: string;
}

/** Parses `41.2,43.1,20.1,10,"D65"`. @throws DeviceFault `frame` */
export function readTristimulus(answer: string): TristimulusReading {
  const fields = splitOutsideQuotes(answer, ',') ?? [];
  const [X, Y, Z, observer] = fields.slice(0, 4).map((field) => parsePlainNumber(field));
  const illuminant = unquote(fields[4] ?? '');
  const inRange = [X, Y, Z].every((value) => value !== undefined && value >= 0 && value <= 200);
  if (fields.length !== 5 || !inRange || (observer !== 2 && observer !== 10) || !illuminant) {
    throw new DeviceFault('frame', { asked: 'MEAS:XYZ?', seen: `"${answer.slice(0, 60)}"` });
  }
  return { XYZ: [X as number, Y as number, Z as number], observer, illuminant };
}
