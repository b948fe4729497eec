/**
 * Whether the standards on hiding cover a paint: ISO 6504-3 is for white and light paints, Y over 25 (2006 edition);
 * ASTM D2805 for paints of Y over 15 (both from published summaries).
 */
import { DEFAULT_WHITE } from '../../colour/illuminant.ts';
import { tristimulusWeights } from '../../colour/tristimulus.ts';
import { xyzOf } from '../../colour/xyz.ts';
import type { MixingPalette } from '../palette.ts';
import { predictReflectance } from '../predict.ts';
import { say } from '../sentences.ts';

const ISO_6504_3_Y = 25;
const ASTM_D2805_Y = 15;

export interface HidingScope {
  /** Y of the film that hides, 0..100, D65/10deg. */
  readonly Y: number;
  readonly iso6504: boolean;
  readonly astmD2805: boolean;
  readonly words: string;
}

/** What the standards would say of a contrast ratio of this tube's masstone. */
export function hidingScope(palette: MixingPalette, id: string): HidingScope {
  const { Y } = xyzOf(predictReflectance(palette, { [id]: 1 }).measured, tristimulusWeights(DEFAULT_WHITE));
  const iso6504 = Y > ISO_6504_3_Y;
  const astmD2805 = Y > ASTM_D2805_Y;
  const read = say('y-is', { Y: Y.toFixed(1) });
  const words = iso6504
    ? say('light-for-both', { read, iso: ISO_6504_3_Y, astm: ASTM_D2805_Y })
    : astmD2805
      ? say('light-for-one', { read, astm: ASTM_D2805_Y, iso: ISO_6504_3_Y })
      : say('dark-for-both', { read, iso: ISO_6504_3_Y, astm: ASTM_D2805_Y });
  return { Y, iso6504, astmD2805, words };
}
