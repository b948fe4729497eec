import { labOfReflectance } from '../../../src/colour/lab.ts';
import { lampWeights } from '../../../src/colour/lamp-weights.ts';
import { valueOfReflectance } from '../../../src/colour/value-of-reflectance.ts';
import { settings } from '../state/settings.ts';
import type { Patch } from './patch.ts';

/** A spectrum (0..1, on the 380-730 nm grid unless told otherwise) as a patch under the lamp in use. */
export function patchOfReflectance(reflectance: ArrayLike<number>, wavelengthsNm?: readonly number[]): Patch {
  const lamp = settings().lamp;
  return {
    lab: labOfReflectance(reflectance, lampWeights(lamp, wavelengthsNm)),
    value: valueOfReflectance(reflectance, wavelengthsNm),
  };
}
