import type { Check, SwatchSet } from '../../calibrate/swatch-set/schema.ts';
import { pilesOf, sharesOfPile } from '../../calibrate/swatch-set/piles.ts';
import { ciede2000 } from '../../colour/ciede2000.ts';
import { GRID_NM } from '../../colour/grid.ts';
import { DEFAULT_WHITE, type WhiteName } from '../../colour/illuminant.ts';
import { labOfReflectance } from '../../colour/lab.ts';
import { tristimulusWeights } from '../../colour/tristimulus.ts';
import { labRegion } from '../../fit/lab-region.ts';
import { gridEstimator } from '../../fit/observe/grid-estimate.ts';
import { readingNoise } from '../../fit/observe/reading-noise.ts';
import { readingOf, responseRows } from '../../fit/observe/response-rows.ts';
import type { MixingPalette } from '../../fit/palette.ts';
import { predictWithCovariance } from '../../fit/predict.ts';
import { type CheckedFilm, predictFilm } from './film-check.ts';
import { type CheckSummary, summaryOf } from './summary.ts';
import { say } from '../sentences.ts';

/** One mixture never fitted, predicted beside what it is. */
export interface CheckedMixture {
  readonly id: string;
  /** Prediction at `wavelengths`, as the geometry reads it. */
  readonly reflectance: readonly number[];
  /** CIEDE2000 of the prediction against the truth, or against the mean reading. */
  readonly deltaE00: number;
  /** Whether the truth (or the reading, its noise counted) lies in the 95 % region of the prediction. */
  readonly inside95: boolean;
  /** CIEDE2000 that the truth was said to stay under 95 times in 100. */
  readonly region: number;
  /** Thickness fitted to this drawdown alone, in units of the white's scattering; finite films only. */
  readonly thickness?: number;
}

export interface CheckReport {
  readonly wavelengths: readonly number[];
  readonly checks: readonly CheckedMixture[];
  readonly summary: CheckSummary;
}

/**
 * Predicts every check of a swatch set and compares. Truths are compared as spectra; readings in the space of the
 * reading: the predicted spectrum plus the smoothest spectrum that reads as the difference, so that a few-band reading
 * is asked only about what it can see. A finite film has one thickness, fitted to its own drawdown and nothing else.
 * @throws RangeError for another geometry, an unknown tube, or a document without checks.
 */
export function checkProfile(
  palette: MixingPalette,
  set: SwatchSet,
  options: { readonly white?: WhiteName } = {},
): CheckReport {
  const white = options.white ?? DEFAULT_WHITE;
  if (set.checks.length === 0) {
    throw new RangeError(say('no-checks'));
  }
  if (set.instrument.geometry !== palette.geometry) {
    throw new RangeError(
      say('other-geometry', { checks: set.instrument.geometry, profile: palette.geometry }),
    );
  }
  const piles = pilesOf(set);
  const zero = new Float64Array(piles.errorCount);
  const massesOf = (check: Check): Record<string, number> => {
    const { shares } = sharesOfPile(piles, piles.pileOf.get(check.id)!, zero);
    return Object.fromEntries(piles.tubeIds.flatMap((id, t) => (shares[t]! > 0 ? [[id, shares[t]!]] : [])));
  };
  const films = filmsOf(palette, set, massesOf);
  const rows = responseRows(set.instrument);
  const spectral = set.instrument.kind === 'spectral' ? set.instrument.wavelengths : undefined;
  const wavelengths = spectral ?? GRID_NM;
  const weights = tristimulusWeights(white, wavelengths);
  const onWavelengths = (v: Float64Array): Float64Array => (spectral ? readingOf(rows, v) : v);
  const toGrid = gridEstimator(rows);
  const noise = readingNoise(set);

  const checks = set.checks.map((check): CheckedMixture => {
    const film = films.get(check.id);
    const predicted = film ?? predictWithCovariance(palette, massesOf(check));
    const reflectance = onWavelengths(predicted.measured);
    const factor = predicted.factor.map(onWavelengths);
    let actual: Float64Array;
    if (check.truth) actual = Float64Array.from(check.truth);
    else {
      const readings = check.readings!;
      const reading = readingOf(rows, predicted.measured);
      const mean = Float64Array.from(
        reading,
        (_, c) => readings.reduce((a, r) => a + r[c]!, 0) / readings.length,
      );
      const difference = mean.map((v, c) => v - reading[c]!);
      actual = spectral ? mean : toGrid(difference).map((d, i) => d + predicted.measured[i]!);
      mean.forEach((v, c) => {
        const sd = Math.sqrt((noise.sigma ** 2 + (noise.relative * v) ** 2) / readings.length);
        const unit = new Float64Array(mean.length);
        unit[c] = sd;
        factor.push(spectral ? unit : toGrid(unit));
      });
    }
    const region = labRegion(reflectance, factor, white, weights);
    const lab = labOfReflectance(actual, weights);
    return {
      id: check.id,
      reflectance: [...reflectance],
      deltaE00: ciede2000(region.lab, lab),
      inside95: region.contains(lab),
      region: region.radius,
      ...(film ? { thickness: film.X } : {}),
    };
  });
  return { wavelengths: [...wavelengths], checks, summary: summaryOf(checks) };
}

/** Every finite film of the document predicted, drawdown by drawdown. */
function filmsOf(
  palette: MixingPalette,
  set: SwatchSet,
  massesOf: (check: Check) => Record<string, number>,
): Map<string, CheckedFilm> {
  const byDrawdown = new Map<string, Check[]>();
  for (const check of set.checks) {
    if (check.film === 'opaque') continue;
    const { drawdown } = check.film;
    byDrawdown.set(drawdown, [...(byDrawdown.get(drawdown) ?? []), check]);
  }
  const films = new Map<string, CheckedFilm>();
  for (const checks of byDrawdown.values()) {
    predictFilm(palette, set, massesOf(checks[0]!), checks).forEach((film, i) =>
      films.set(checks[i]!.id, film),
    );
  }
  return films;
}
