import { GRID_SIZE, type Spectrum } from '../colour/grid.ts';
import { DEFAULT_WHITE, type WhiteName } from '../colour/illuminant.ts';
import { type Lab, chroma, hueDegrees, labOf } from '../colour/lab.ts';
import { WARM_HUE_DEGREES, lean, leanWord } from '../colour/lean.ts';
import { luminanceOfValue, valueOfLuminance } from '../colour/munsell-value.ts';
import { type Xyz, xyzOf } from '../colour/xyz.ts';
import { tristimulusWeights } from '../colour/tristimulus.ts';
import { labRegion } from '../fit/lab-region.ts';
import type { MixingPalette } from '../fit/palette.ts';
import { type FilmStack, type Masses, type StackReflectance, stackReflectance } from './film-stack.ts';

/** Two-sided 95 % of the normal distribution (any table of it). */
const NORMAL_95 = 1.96;

/** What a predicted colour rests on: 95 of 100 mixes made exactly by the recipe lie inside. */
export interface MixInterval {
  /** CIEDE2000 from the predicted colour. */
  readonly radius95: number;
  /** Munsell value, low and high. */
  readonly value: readonly [number, number];
  /** Lean, CIELAB units, low and high. */
  readonly lean: readonly [number, number];
  /** Covariance of (L, a, b), row by row. */
  readonly covariance: readonly (readonly number[])[];
  /** Reflectance, low and high at each wavelength of the grid. */
  readonly reflectance: { readonly low: Spectrum; readonly high: Spectrum };
}

/** A colour as every screen and command states it. */
export interface MixColour<W extends WhiteName = WhiteName> {
  readonly xyz: Xyz<W>;
  readonly lab: Lab<W>;
  /** Munsell value 0..10, from Y under C/2deg (ASTM D1535) whatever the white of the Lab. */
  readonly value: number;
  /** CIELAB units: above zero warm, below zero cool. */
  readonly lean: number;
  readonly leanWord: 'warm' | 'cool' | 'neutral';
  readonly chroma: number;
  /** Degrees, 0..360. */
  readonly hue: number;
}

export interface MixPrediction<W extends WhiteName = WhiteName> extends MixColour<W> {
  /** Reflectance factor on the grid, as the palette's geometry reads it. */
  readonly reflectance: Spectrum;
  readonly interval: MixInterval;
}

/** The colour of a reflectance on the grid. */
export function colourOfReflectance<W extends WhiteName>(
  reflectance: ArrayLike<number>,
  white: W,
): MixColour<W> {
  const xyz = xyzOf(reflectance, tristimulusWeights(white));
  const lab = labOf(xyz);
  const value = valueOfLuminance(xyzOf(reflectance, tristimulusWeights('C/2deg')).Y);
  return {
    xyz,
    lab,
    value,
    lean: lean(lab),
    leanWord: leanWord(lab),
    chroma: chroma(lab),
    hue: hueDegrees(lab),
  };
}

function predictionOf<W extends WhiteName>(at: StackReflectance, white: W): MixPrediction<W> {
  const colour = colourOfReflectance(at.measured, white);
  const region = labRegion(at.measured, at.factor, white);
  const [, aa, bb] = region.covariance;
  const h = (WARM_HUE_DEGREES * Math.PI) / 180;
  const c = Math.cos(h);
  const s = Math.sin(h);
  const sdLean = Math.sqrt(Math.max(0, c * c * aa[1]! + 2 * c * s * aa[2]! + s * s * bb[2]!));
  const luminosity = tristimulusWeights('C/2deg').y;
  let varianceY = 0;
  const spread = new Float64Array(GRID_SIZE);
  for (const column of at.factor) {
    let dY = 0;
    for (let i = 0; i < GRID_SIZE; i++) {
      dY += luminosity[i]! * column[i]!;
      spread[i]! += column[i]! * column[i]!;
    }
    varianceY += dY * dY;
  }
  const step = 1e-4;
  const slope = (luminanceOfValue(colour.value + step) - luminanceOfValue(colour.value - step)) / (2 * step);
  const sdValue = Math.sqrt(varianceY) / slope;
  const around = (middle: number, sd: number): [number, number] => [
    middle - NORMAL_95 * sd,
    middle + NORMAL_95 * sd,
  ];
  return {
    ...colour,
    reflectance: at.measured,
    interval: {
      radius95: region.radius,
      value: around(colour.value, sdValue),
      lean: around(colour.lean, sdLean),
      covariance: region.covariance,
      reflectance: {
        low: at.measured.map((r, i) => r - NORMAL_95 * Math.sqrt(spread[i]!)),
        high: at.measured.map((r, i) => r + NORMAL_95 * Math.sqrt(spread[i]!)),
      },
    },
  };
}

/**
 * What a mix will look like once it is thick enough to hide.
 * `masses`: by tube id, in any one unit (only ratios count). `white`: the white the colour is stated under.
 * @throws RangeError for an unknown tube, a mass that is negative or not a number, or no paint at all.
 */
export function predictMix<W extends WhiteName = typeof DEFAULT_WHITE>(
  palette: MixingPalette,
  masses: Masses,
  white: W = DEFAULT_WHITE as W,
): MixPrediction<W> {
  return predictionOf(stackReflectance(palette, { ground: { paint: masses }, films: [] }), white);
}

/**
 * What films over a ground will look like: a tint over a toned ground, a glaze over a dried layer, a stack of glazes.
 * Thickness: see filmThickness for micrometres.
 * @throws RangeError as predictMix does, and for a thickness below 0 or a ground the surface cannot have read.
 */
export function predictFilms<W extends WhiteName = typeof DEFAULT_WHITE>(
  palette: MixingPalette,
  stack: FilmStack,
  white: W = DEFAULT_WHITE as W,
): MixPrediction<W> {
  return predictionOf(stackReflectance(palette, stack), white);
}

/**
 * From undertone to impasto: one mix over one ground at several thicknesses (units of the white's scattering), thin
 * first as given, and opaque last.
 */
export function undertoneToImpasto<W extends WhiteName = typeof DEFAULT_WHITE>(
  palette: MixingPalette,
  masses: Masses,
  ground: FilmStack['ground'],
  thicknesses: readonly number[],
  white: W = DEFAULT_WHITE as W,
): { readonly X: number | 'opaque'; readonly prediction: MixPrediction<W> }[] {
  return [
    ...thicknesses.map((X) => ({
      X,
      prediction: predictFilms(palette, { ground, films: [{ masses, X }] }, white),
    })),
    { X: 'opaque' as const, prediction: predictMix(palette, masses, white) },
  ];
}

/** Y over the black of a card divided by Y over its white (ISO 6504-3, ASTM D2805), as read, 0..1; 0.98 hides. */
export function contrastRatio(
  palette: MixingPalette,
  film: FilmStack['films'][number],
  card: { readonly black: ArrayLike<number>; readonly white: ArrayLike<number> },
  white: WhiteName = DEFAULT_WHITE,
): number {
  const over = (reflectance: ArrayLike<number>): number =>
    xyzOf(
      stackReflectance(palette, { ground: { reflectance }, films: [film] }).measured,
      tristimulusWeights(white),
    ).Y;
  return over(card.black) / over(card.white);
}
