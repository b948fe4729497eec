import { valueOfLuminance } from './munsell-value.ts';
import { lampWeights } from './lamp-weights.ts';
import { xyzOf } from './xyz.ts';

/** Value of a reflectance on the given wavelengths (the program's grid by default), Y taken under C/2deg. */
export function valueOfReflectance(
  reflectance: ArrayLike<number>,
  wavelengthsNm?: readonly number[],
): number {
  return valueOfLuminance(xyzOf(reflectance, lampWeights('C/2deg', wavelengthsNm)).Y);
}
