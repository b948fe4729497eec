import { type FrameDoubt } from './frame-doubt.ts';
import { say } from './sentences.ts';

/** What stands for all tubes of a fit or a profile. */
export interface SharedFrame {
  readonly surface: { readonly k2: number; readonly haze: number };
  readonly crowding?: number | undefined;
  readonly frameDoubt?: { readonly crowding?: FrameDoubt['crowding'] | readonly number[] } | undefined;
}

/**
 * What was found of surface and white from all tubes together, each give or take its standard deviation; undefined where all
 * of it was assumed. They are effective: on paints made with a crowding of 0.15 it is found 1 to 3 deviations too high, and k2
 * as much too low, each for the other (docs/method.md).
 * @param estimated standard deviations of k2 and haze (reflectance factor) where they were found
 */
export function frameWords(
  { surface, crowding, frameDoubt }: SharedFrame,
  estimated: { readonly k2?: number | undefined; readonly haze?: number | undefined } = {},
): string | undefined {
  const parts: string[] = [];
  const { k2, haze } = estimated;
  if (k2 !== undefined) {
    const range = { value: surface.k2.toFixed(2), doubt: k2.toFixed(2) };
    parts.push(say('frame-inside', range));
  }
  if (haze !== undefined) {
    const range = { value: surface.haze.toFixed(4), doubt: haze.toFixed(4) };
    parts.push(say('frame-haze', range));
  }
  const crowded = Math.hypot(...(frameDoubt?.crowding ?? []));
  if (crowding !== undefined && crowded > 0) {
    const range = { percent: (100 * crowding).toFixed(0), doubt: (100 * crowded).toFixed(0) };
    parts.push(say('frame-crowding', range));
  }
  return parts.length > 0 ? say('frame', { parts: parts.join('; ') }) : undefined;
}
