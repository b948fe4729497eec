/**
 * Warm and cool: how far a colour leans toward orange or toward blue from the neutral of the same value.
 * The axis through orange at CIELAB hue 60 degrees and blue at 240 degrees is common practice among painters put into
 * numbers by this project; it has no published source.
 */
import type { Lab } from './lab.ts';

/** CIELAB hue of the warm pole, degrees. Common practice, no source. */
export const WARM_HUE_DEGREES = 60;

/** Signed lean in CIELAB units: positive is warm, negative is cool, zero is neutral or across the axis. */
export function lean(lab: Pick<Lab, 'a' | 'b'>): number {
  const h = (WARM_HUE_DEGREES * Math.PI) / 180;
  return lab.a * Math.cos(h) + lab.b * Math.sin(h);
}

/** Below this lean (CIELAB units) a colour is called neutral. Common practice, no source. */
export const NEUTRAL_LEAN = 1;

/** The word for a lean. */
export function leanWord(lab: Pick<Lab, 'a' | 'b'>): 'warm' | 'cool' | 'neutral' {
  const l = lean(lab);
  return l > NEUTRAL_LEAN ? 'warm' : l < -NEUTRAL_LEAN ? 'cool' : 'neutral';
}
