/**
 * How two tubes differ for a painter: masstone, tints, undertone, tinting strength, hiding. Strength after ASTM D4838
 * (relative tinting strength of artists' paints): 100 (q_test - q_white) / (q_reference - q_white) at the wavelength
 * of the reference tint's greatest absorption, at equal ratios; the exact form is from memory of the standard.
 * Contrast ratio 0.98 for full hiding: ISO 6504-3, ASTM D2805.
 */
import { ciede2000 } from '../../colour/ciede2000.ts';
import { GRID_NM, flatSpectrum } from '../../colour/grid.ts';
import { DEFAULT_WHITE } from '../../colour/illuminant.ts';
import type { Lab } from '../../colour/lab.ts';
import { lean } from '../../colour/lean.ts';
import { tristimulusWeights, xyzOf } from '../../colour/tristimulus.ts';
import { CHI_SQUARE_3_95 } from '../../fit/lab-region.ts';
import { type MixingPalette, tubeOf } from '../../fit/palette.ts';
import { type PredictedFilm, predictReflectance, predictWithCovariance } from '../../fit/predict.ts';
import { type WithDoubt, withDoubt } from './doubt.ts';

export interface ColourDifference {
  /** "masstone", "1:4", "undertone" */
  readonly of: string;
  readonly older: Lab;
  readonly newer: Lab;
  readonly deltaE00: number;
  /** True when the difference lies outside what the doubt of both tubes allows 95 times in 100. */
  readonly beyondDoubt: boolean;
}

export interface TubeDifference {
  readonly olderId: string;
  readonly newerId: string;
  readonly colours: readonly ColourDifference[];
  /** Per cent of the older tube's tinting strength. */
  readonly strengthPercent: WithDoubt;
  /** Film thickness for a contrast ratio of 0.98, newer over older. */
  readonly hidingThicknessRatio: WithDoubt;
  /** Plain sentences, most noticeable first; says so when nothing is beyond doubt. */
  readonly words: readonly string[];
}

/** A tint's parts of white to one part of paint. */
const TINTS = [1, 4, 16];
/** Thickness of the undertone's film, in units of the white's scattering: thin enough to show the card. This project's choice. */
const UNDERTONE_X = 0.5;
/** A sealed white and black card, as reflectance factors. ASTM D2805 asks for at least 0.78 and at most 0.01. */
const CARD = { white: flatSpectrum(0.82), black: flatSpectrum(0.01) };

/**
 * Compares two tubes that stand in one palette (same white, same fit or bridged).
 * @throws RangeError when either is not in the palette.
 */
export function tubeDifference(palette: MixingPalette, olderId: string, newerId: string): TubeDifference {
  tubeOf(palette, olderId);
  tubeOf(palette, newerId);
  const colours = [
    colourDifference(palette, 'masstone', { [olderId]: 1 }, { [newerId]: 1 }),
    ...TINTS.map((w) =>
      colourDifference(
        palette,
        `1:${w}`,
        { [olderId]: 1, [palette.white]: w },
        { [newerId]: 1, [palette.white]: w },
      ),
    ),
    colourDifference(
      palette,
      'undertone',
      { [olderId]: 1 },
      { [newerId]: 1 },
      {
        X: UNDERTONE_X,
        backing: CARD.white,
      },
    ),
  ];
  const both = [olderId, newerId, palette.white];
  const strengthPercent = withDoubt(palette, both, (p) => strength(p, olderId, newerId));
  const hidingThicknessRatio = hidingRatio(palette, both, olderId, newerId);
  return {
    olderId,
    newerId,
    colours,
    strengthPercent,
    hidingThicknessRatio,
    words: wordsFor(colours, strengthPercent, hidingThicknessRatio),
  };
}

function colourDifference(
  palette: MixingPalette,
  of: string,
  older: Record<string, number>,
  newer: Record<string, number>,
  film: PredictedFilm = 'opaque',
): ColourDifference {
  const a = predictWithCovariance(palette, older, film).labRegion;
  const b = predictWithCovariance(palette, newer, film).labRegion;
  const d = [b.lab.L - a.lab.L, b.lab.a - a.lab.a, b.lab.b - a.lab.b];
  const C = a.covariance.map((row, r) => row.map((v, c) => v + b.covariance[r]![c]!));
  return {
    of,
    older: a.lab,
    newer: b.lab,
    deltaE00: ciede2000(a.lab, b.lab),
    beyondDoubt: mahalanobis(C, d) > CHI_SQUARE_3_95,
  };
}

/** d^T C^-1 d for three dimensions, by Cramer's rule on the adjugate. */
function mahalanobis(C: readonly (readonly number[])[], d: readonly number[]): number {
  const [[a, b, c], [, e, f], [, , i]] = C as [
    [number, number, number],
    [number, number, number],
    [number, number, number],
  ];
  const adj = [
    [e * i - f * f, c * f - b * i, b * f - c * e],
    [c * f - b * i, a * i - c * c, b * c - a * f],
    [b * f - c * e, b * c - a * f, a * e - b * b],
  ];
  const det = a * adj[0]![0]! + b * adj[1]![0]! + c * adj[2]![0]!;
  const q = adj.reduce((sum, row, r) => sum + d[r]! * row.reduce((s, v, k) => s + v * d[k]!, 0), 0);
  return det > 0 ? q / det : d.some((v) => v !== 0) ? Number.POSITIVE_INFINITY : 0;
}

function qOf(palette: MixingPalette, masses: Record<string, number>): Float64Array {
  return predictReflectance(palette, masses).internal.map((R) => (1 - R) ** 2 / (2 * R));
}

function strength(palette: MixingPalette, olderId: string, newerId: string): number {
  const tint = (id: string): Float64Array => qOf(palette, { [id]: 1, [palette.white]: 4 });
  const white = qOf(palette, { [palette.white]: 1 });
  const reference = tint(olderId);
  // Between 400 and 700 nm, where the eye sees and every instrument reads.
  const inside = reference.map((q, i) =>
    GRID_NM[i]! >= 400 && GRID_NM[i]! <= 700 ? q - white[i]! : Number.NEGATIVE_INFINITY,
  );
  const at = inside.indexOf(Math.max(...inside));
  return (100 * (tint(newerId)[at]! - white[at]!)) / (reference[at]! - white[at]!);
}

/** Y over black divided by Y over white of a film of thickness X (white-scattering units). */
function contrast(palette: MixingPalette, id: string, X: number): number {
  const weights = tristimulusWeights(DEFAULT_WHITE);
  const over = (backing: Float64Array): number =>
    xyzOf(predictReflectance(palette, { [id]: 1 }, { X, backing }).measured, weights).Y;
  return over(CARD.black) / over(CARD.white);
}

/** Thickness at which the contrast ratio is 0.98, by bisection on ln X. */
function hidingX(palette: MixingPalette, id: string): number {
  let low = Math.log(1e-4);
  let high = Math.log(1e5);
  for (let i = 0; i < 60; i++) {
    const mid = (low + high) / 2;
    if (contrast(palette, id, Math.exp(mid)) < 0.98) low = mid;
    else high = mid;
  }
  return Math.exp((low + high) / 2);
}

/**
 * Newer hiding thickness over older. Its doubt by the implicit function: where constants move the contrast at X by dC,
 * the hiding thickness moves by -dC / (dC/dln X), which spares a search for every column of doubt.
 */
function hidingRatio(
  palette: MixingPalette,
  ids: readonly string[],
  olderId: string,
  newerId: string,
): WithDoubt {
  const STEP = 1e-3;
  const at = (id: string) => {
    const X = hidingX(palette, id);
    const rise = contrast(palette, id, X * Math.exp(STEP)) - contrast(palette, id, X * Math.exp(-STEP));
    return { X, slope: rise / (2 * STEP) };
  };
  const older = at(olderId);
  const newer = at(newerId);
  const lnRatio = withDoubt(
    palette,
    ids,
    (p) => contrast(p, olderId, older.X) / older.slope - contrast(p, newerId, newer.X) / newer.slope,
  );
  const value = newer.X / older.X;
  return { value, sd: value * lnRatio.sd };
}

function wordsFor(
  colours: readonly ColourDifference[],
  strengthPercent: WithDoubt,
  hiding: WithDoubt,
): string[] {
  const words: string[] = [];
  for (const c of [...colours].sort((p, q) => q.deltaE00 - p.deltaE00)) {
    if (c.beyondDoubt)
      words.push(
        `The ${c.of} differs by ${c.deltaE00.toFixed(1)} (CIEDE2000): ${direction(c.older, c.newer)}.`,
      );
  }
  if (Math.abs(strengthPercent.value - 100) > 2 * strengthPercent.sd) {
    const more = strengthPercent.value > 100;
    words.push(
      `It is ${more ? 'stronger' : 'weaker'}: ${strengthPercent.value.toFixed(0)} % of the old tube's tinting strength (give or take ${(2 * strengthPercent.sd).toFixed(0)}), so use ${more ? 'less' : 'more'} of it.`,
    );
  }
  if (Math.abs(Math.log(hiding.value)) > (2 * hiding.sd) / hiding.value) {
    words.push(
      `It hides ${hiding.value < 1 ? 'better' : 'less'}: full hiding takes ${hiding.value.toFixed(2)} times the thickness.`,
    );
  }
  if (words.length === 0) words.push('No difference is larger than the doubt of the two measurements.');
  return words;
}

function direction(older: Lab, newer: Lab): string {
  const parts: string[] = [];
  const dL = newer.L - older.L;
  if (Math.abs(dL) > 0.5) parts.push(dL > 0 ? 'lighter' : 'darker');
  const dC = Math.hypot(newer.a, newer.b) - Math.hypot(older.a, older.b);
  if (Math.abs(dC) > 0.5) parts.push(dC > 0 ? 'stronger in colour' : 'greyer');
  const dW = lean(newer) - lean(older);
  if (Math.abs(dW) > 0.5) parts.push(dW > 0 ? 'warmer' : 'cooler');
  return parts.join(', ') || 'a shade apart';
}
