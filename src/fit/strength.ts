/**
 * Tinting strength. Relative, after ASTM D4838 (artists' paints): 100 (q_test - q_white) / (q_reference - q_white),
 * q = K/S, at the wavelength of the reference tint's greatest absorption, both tints at one ratio; the exact form is
 * from memory of the standard. The half-strength ratio is this project's own: it needs no other tube.
 */
import { GRID_NM } from '../colour/grid.ts';
import { DEFAULT_WHITE } from '../colour/illuminant.ts';
import { labOfReflectance } from '../colour/lab.ts';
import { tristimulusWeights } from '../colour/tristimulus.ts';
import { type WithDoubt, withDoubt } from './doubt.ts';
import { kOverS } from './optics/kubelka-munk.ts';
import { type MixingPalette, tubeOf } from './palette.ts';
import { predictReflectance } from './predict.ts';

/** Parts of white to one of paint at which strengths are compared: the ladder's middle tint. */
export const STRENGTH_TINT = 4;
/** Parts of white sought, natural logarithm: from a hundredth to a hundred thousand. */
const PARTS = [Math.log(0.01), Math.log(1e5)] as const;

/** Per cent of the reference's strength, from K/S at one wavelength. @throws RangeError where the reference does not tint. */
export function strengthPercentOf(qTest: number, qReference: number, qWhite: number): number {
  if (!(qReference > qWhite)) {
    throw new RangeError(
      `The reference tint absorbs no more than the white there (K/S ${qReference} against ${qWhite}); give its greatest absorption.`,
    );
  }
  return (100 * (qTest - qWhite)) / (qReference - qWhite);
}

function qOf(palette: MixingPalette, masses: Record<string, number>): Float64Array {
  return predictReflectance(palette, masses).internal.map(kOverS);
}

/** Grid index, 400 to 700 nm (where the eye sees and every instrument reads), of the reference tint's greatest absorption. */
function greatestAbsorption(reference: Float64Array, white: Float64Array): number {
  const inside = reference.map((q, i) =>
    GRID_NM[i]! >= 400 && GRID_NM[i]! <= 700 ? q - white[i]! : Number.NEGATIVE_INFINITY,
  );
  return inside.indexOf(Math.max(...inside));
}

/**
 * Per cent of a reference tube's tinting strength, with one standard deviation; doubts the tubes share count once.
 * @throws RangeError for tubes that are not in the palette, or the white as either.
 */
export function tintingStrength(palette: MixingPalette, referenceId: string, testId: string): WithDoubt {
  const tint = (p: MixingPalette, id: string): Float64Array => qOf(p, { [id]: 1, [p.white]: STRENGTH_TINT });
  const white = (p: MixingPalette): Float64Array => qOf(p, { [p.white]: 1 });
  for (const id of [referenceId, testId]) {
    tubeOf(palette, id);
    if (id === palette.white) {
      throw new RangeError(
        `"${id}" is the white of the tints; tinting strength is of the tubes mixed into it.`,
      );
    }
  }
  const at = greatestAbsorption(tint(palette, referenceId), white(palette));
  return withDoubt(palette, [referenceId, testId, palette.white], (p) =>
    strengthPercentOf(tint(p, testId)[at]!, tint(p, referenceId)[at]!, white(p)[at]!),
  );
}

export interface HalfStrength {
  /** Parts of white to one of paint, by mass, with the bounds that hold the truth 95 times in 100. */
  readonly parts: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Parts of white at which L* is midway between the white's and the masstone's. The doubt by the implicit function.
 * @throws RangeError where the masstone is as light as the white, within 1 L*: there is no middle.
 */
export function halfStrength(palette: MixingPalette, id: string): HalfStrength {
  const weights = tristimulusWeights(DEFAULT_WHITE);
  const L = (p: MixingPalette, masses: Record<string, number>): number =>
    labOfReflectance(predictReflectance(p, masses).measured, weights).L;
  /** L* of a tint above the middle. */
  const above = (p: MixingPalette, lnParts: number): number =>
    L(p, { [id]: 1, [p.white]: Math.exp(lnParts) }) - (L(p, { [id]: 1 }) + L(p, { [p.white]: 1 })) / 2;
  if (Math.abs(L(palette, { [palette.white]: 1 }) - L(palette, { [id]: 1 })) < 1) {
    throw new RangeError(
      `"${id}" is as light as the white; a half-strength ratio needs a paint that darkens it.`,
    );
  }
  const sign = Math.sign(above(palette, PARTS[1]));
  let [low, high]: [number, number] = [...PARTS];
  for (let i = 0; i < 60; i++) {
    const mid = (low + high) / 2;
    if (sign * above(palette, mid) < 0) low = mid;
    else high = mid;
  }
  const at = (low + high) / 2;
  const slope = (above(palette, at + 1e-3) - above(palette, at - 1e-3)) / 2e-3;
  const { sd } = withDoubt(palette, [id, palette.white], (p) => above(p, at) / slope);
  return { parts: Math.exp(at), low: Math.exp(at - 1.96 * sd), high: Math.exp(at + 1.96 * sd) };
}
