/**
 * Tinting strength. Relative, after ASTM D4838 (artists' paints): 100 (q_test - q_white) / (q_reference - q_white),
 * q = K/S, at the wavelength of the reference tint's greatest absorption, both tints at one ratio; the exact form is
 * from memory of the standard. The half-strength ratio is this project's own: it needs no other tube.
 */
import { GRID_NM, GRID_SIZE } from '../colour/grid.ts';
import { type Slopes, type WithDoubt, combined, sdOf } from './doubt.ts';
import { frameColumns } from './frame-doubt.ts';
import { NORMAL_95_TWO_SIDED } from './film-facts/contrast-ratio.ts';
import { luminanceOf } from './luminance.ts';
import { mixtureConstants } from './mixture.ts';
import { type MixingPalette, labelOf, tubeOf } from './palette.ts';
import { say } from './sentences.ts';

/** Parts of white to one of paint at which strengths are compared: the ladder's middle tint. */
export const STRENGTH_TINT = 4;
/** Parts of white sought, natural logarithm: from a hundredth to a hundred thousand. */
const PARTS = [Math.log(0.01), Math.log(1e5)] as const;

/** Per cent of the reference's strength, from K/S at one wavelength. @throws RangeError where the reference does not tint. */
export function strengthPercentOf(qTest: number, qReference: number, qWhite: number): number {
  if (!(qReference > qWhite)) {
    throw new RangeError(say('reference-tint', { paint: qReference, white: qWhite }));
  }
  return (100 * (qTest - qWhite)) / (qReference - qWhite);
}

/** K/S of a mixture on the grid, with the slopes of it at one wavelength. */
function absorptionOf(
  palette: MixingPalette,
  masses: Readonly<Record<string, number>>,
): { q: Float64Array; slopesAt: (i: number) => Slopes } {
  const { K, S, parts } = mixtureConstants(palette, masses);
  const q = K.map((k, i) => k / S[i]!);
  // Of the frame, K/S itself answers to crowding alone: dq/dS is -q/S.
  const crowded = palette.frameDoubt?.crowding;
  const byS = q.map((v, i) => -v / S[i]!);
  const ofCrowding = crowded
    ? frameColumns(
        { ...palette, frameDoubt: { crowding: crowded } },
        { K, S, parts, internal: new Float64Array(GRID_SIZE), dS: byS },
      )
    : [];
  const frameAt = (i: number) => new Map(ofCrowding.map(([j, column]) => [j, column[i]!]));
  return {
    q,
    slopesAt: (i) => {
      const afresh = new Float64Array(GRID_SIZE);
      afresh[i] = q[i]!;
      const tubes = new Map(
        parts.map((part) => {
          const g = new Float64Array(2 * GRID_SIZE);
          g[i] = part.K[i]! / S[i]!;
          g[GRID_SIZE + i] = (-q[i]! * part.S[i]!) / S[i]!;
          return [part.id, g] as const;
        }),
      );
      return { tubes, afresh: [afresh], frame: frameAt(i) };
    },
  };
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
  for (const id of [referenceId, testId]) {
    tubeOf(palette, id);
    if (id === palette.white) {
      throw new RangeError(say('strength-of-white', { id: labelOf(palette, id) }));
    }
  }
  const tint = (id: string) => absorptionOf(palette, { [id]: 1, [palette.white]: STRENGTH_TINT });
  const white = absorptionOf(palette, { [palette.white]: 1 });
  const reference = tint(referenceId);
  const test = tint(testId);
  const i = greatestAbsorption(reference.q, white.q);
  const value = strengthPercentOf(test.q[i]!, reference.q[i]!, white.q[i]!);
  if (testId === referenceId) return { value, sd: 0 };
  const above = reference.q[i]! - white.q[i]!;
  const slopes = combined(
    [100 / above, test.slopesAt(i)],
    [-value / above, reference.slopesAt(i)],
    [(value - 100) / above, white.slopesAt(i)],
  );
  return { value, sd: sdOf(palette, slopes) };
}

/**
 * The same with the bounds that hold the truth 95 times in 100, taken in the logarithm: a strength is above 0.
 * @throws RangeError as `tintingStrength` does.
 */
export function strengthPercent(
  palette: MixingPalette,
  referenceId: string,
  testId: string,
): { value: number; low: number; high: number } {
  const { value, sd } = tintingStrength(palette, referenceId, testId);
  const width = Math.exp((NORMAL_95_TWO_SIDED * sd) / Math.abs(value));
  return value > 0
    ? { value, low: value / width, high: value * width }
    : { value, low: value - NORMAL_95_TWO_SIDED * sd, high: value + NORMAL_95_TWO_SIDED * sd };
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
  const masstone = luminanceOf(palette, { [id]: 1 });
  const white = luminanceOf(palette, { [palette.white]: 1 });
  const tint = (lnParts: number) => luminanceOf(palette, { [id]: 1, [palette.white]: Math.exp(lnParts) });
  const middle = (lightness(masstone.Y) + lightness(white.Y)) / 2;
  /** L* of a tint above the middle. */
  const above = (lnParts: number): number => lightness(tint(lnParts).Y) - middle;
  if (Math.abs(lightness(white.Y) - lightness(masstone.Y)) < 1) {
    throw new RangeError(say('strength-of-light', { id: labelOf(palette, id) }));
  }
  const sign = Math.sign(above(PARTS[1]));
  let [low, high]: [number, number] = [...PARTS];
  for (let i = 0; i < 40; i++) {
    const mid = (low + high) / 2;
    if (sign * above(mid) < 0) low = mid;
    else high = mid;
  }
  const at = (low + high) / 2;
  const slope = (above(at + 1e-3) - above(at - 1e-3)) / 2e-3;
  const half = tint(at);
  const sd = sdOf(
    palette,
    combined(
      [lightnessSlope(half.Y) / slope, half.slopes],
      [-lightnessSlope(masstone.Y) / (2 * slope), masstone.slopes],
      [-lightnessSlope(white.Y) / (2 * slope), white.slopes],
    ),
  );
  const width = Math.exp(NORMAL_95_TWO_SIDED * Math.abs(sd));
  return { parts: Math.exp(at), low: Math.exp(at) / width, high: Math.exp(at) * width };
}

/** L* of a Y of 0..100 with the perfect diffuser as white (ISO/CIE 11664-4). */
function lightness(Y: number): number {
  const y = Y / 100;
  return y > (6 / 29) ** 3 ? 116 * Math.cbrt(y) - 16 : (y * 24389) / 27;
}

function lightnessSlope(Y: number): number {
  const y = Y / 100;
  return y > (6 / 29) ** 3 ? 116 / (300 * Math.cbrt(y) ** 2) : 24389 / 2700;
}
