/** How two tubes differ for a painter: masstone, tints, undertone, tinting strength, hiding. */
import { ciede2000 } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import { lean } from '../../colour/lean.ts';
import type { WithDoubt } from '../../fit/doubt.ts';
import { sealedCard } from '../../fit/film-facts/card.ts';
import { fullHidingRatio } from '../../fit/film-facts/full-hiding.ts';
import { UNDERTONE_X } from '../../fit/film-facts/undertone.ts';
import { CHI_SQUARE_3_95 } from '../../fit/lab-region.ts';
import { type MixingPalette, tubeOf } from '../../fit/palette.ts';
import { type PredictedFilm, predictWithCovariance } from '../../fit/predict.ts';
import { tintingStrength } from '../../fit/strength.ts';
import { say } from '../sentences.ts';

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
        backing: sealedCard(palette.surface).white,
      },
    ),
  ];
  const strengthPercent = tintingStrength(palette, olderId, newerId);
  const hidingThicknessRatio = fullHidingRatio(palette, olderId, newerId);
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

function wordsFor(
  colours: readonly ColourDifference[],
  strengthPercent: WithDoubt,
  hiding: WithDoubt,
): string[] {
  const words: string[] = [];
  for (const c of [...colours].sort((p, q) => q.deltaE00 - p.deltaE00)) {
    if (c.beyondDoubt)
      words.push(
        say('differs', { of: c.of, deltaE: c.deltaE00.toFixed(1), way: direction(c.older, c.newer) }),
      );
  }
  if (Math.abs(strengthPercent.value - 100) > 2 * strengthPercent.sd) {
    const more = strengthPercent.value > 100;
    words.push(
      say('strength', {
        way: more ? 'stronger' : 'weaker',
        percent: strengthPercent.value.toFixed(0),
        sd: (2 * strengthPercent.sd).toFixed(0),
        use: more ? 'less' : 'more',
      }),
    );
  }
  if (Math.abs(Math.log(hiding.value)) > (2 * hiding.sd) / hiding.value) {
    words.push(say('hiding', { way: hiding.value < 1 ? 'better' : 'less', times: hiding.value.toFixed(2) }));
  }
  if (words.length === 0) words.push(say('no-difference'));
  return words;
}

function direction(older: Lab, newer: Lab): string {
  const parts: string[] = [];
  const dL = newer.L - older.L;
  if (Math.abs(dL) > 0.5) parts.push(dL > 0 ? 'lighter' : 'darker');
  const dC = Math.hypot(newer.a, newer.b) - Math.hypot(older.a, older.b);
  if (Math.abs(dC) > 0.5) parts.push(dC > 0 ? say('stronger-in-colour') : 'greyer');
  const dW = lean(newer) - lean(older);
  if (Math.abs(dW) > 0.5) parts.push(dW > 0 ? 'warmer' : 'cooler');
  return parts.join(', ') || say('shade-apart');
}
