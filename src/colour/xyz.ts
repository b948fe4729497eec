/** XYZ of a reflectance, given the weights; see tristimulus.ts for where these come from. */
import type { WhiteName } from './illuminant.ts';
import { say } from './sentences.ts';

/** CIE tristimulus values; Y of the perfect diffuser is 100. The white is carried so that it cannot be mistaken. */
export interface Xyz<W extends WhiteName = WhiteName> {
  readonly X: number;
  readonly Y: number;
  readonly Z: number;
  readonly white: W;
}

/** One set of weights: X = sum x[i] R[i], and so on; each the same length as the wavelengths. */
export interface TristimulusWeights<W extends WhiteName = WhiteName> {
  readonly white: W;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
}

/** Integrates a reflectance factor (0..1, a little over 1 allowed) sampled where the weights are. */
export function xyzOf<W extends WhiteName>(
  reflectance: ArrayLike<number>,
  weights: TristimulusWeights<W>,
): Xyz<W> {
  if (reflectance.length !== weights.x.length) {
    throw new RangeError(say('weights', { wavelengths: weights.x.length, count: reflectance.length }));
  }
  let X = 0;
  let Y = 0;
  let Z = 0;
  for (let i = 0; i < reflectance.length; i++) {
    const r = reflectance[i]!;
    X += weights.x[i]! * r;
    Y += weights.y[i]! * r;
    Z += weights.z[i]! * r;
  }
  return { X, Y, Z, white: weights.white };
}
