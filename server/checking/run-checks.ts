import { readSwatchSet } from '../../src/calibrate/swatch-set/read.ts';
import type { Backing, Check, ReadingNoise } from '../../src/calibrate/swatch-set/schema.ts';
import { GRID_NM } from '../../src/colour/grid.ts';
import { interpolationRows } from '../../src/colour/interpolation.ts';
import { readingOf, responseRows } from '../../src/fit/observe/response-rows.ts';
import type { MixingPalette } from '../../src/fit/palette.ts';
import { predictWithCovariance } from '../../src/fit/predict.ts';
import { type CheckedMixture, checkProfile } from '../../src/mix/check/check-profile.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import type { CheckAnswer } from '../api/checks.ts';
import type { ReadingForm } from '../api/readings.ts';
import { reflectanceCurve } from '../fitting/band-curve.ts';
import { channelNames, colourOfReading, colourOfReflectance } from '../views/colour-view.ts';
import { say } from '../api/sentences/checks.ts';

/** The mean of the kept readings in the form most of them are in. */
export interface MeanReading {
  readonly values: readonly number[];
  readonly form: ReadingForm;
}

/** Checks that are judged together, with all that is needed to: a worker has no store. */
export interface CheckJob {
  readonly form: ReadingForm;
  readonly noise: ReadingNoise | undefined;
  readonly backings: readonly Backing[];
  readonly checks: readonly Check[];
  /** In the order of the checks. */
  readonly means: readonly (MeanReading | undefined)[];
}

/** Null where the reading has too few channels for a colour. */
export type CheckedOne = Omit<NonNullable<CheckAnswer['result']>, 'profileId'> | null;

/** Predicted against measured, job by job and check by check. @throws SwatchSetProblem, RangeError */
export function runChecks(profile: PaletteProfile, jobs: readonly CheckJob[]): CheckedOne[][] {
  const palette = paletteOf(profile);
  return jobs.map((job) => {
    const set = readSwatchSet({
      format: 'swatch-set',
      version: 1,
      instrument: job.form,
      ...(job.noise ? { noise: job.noise } : {}),
      backings: job.backings,
      tubes: profile.tubes.map(({ id }) => ({ id, ...(id === profile.white ? { role: 'white' } : {}) })),
      swatches: [],
      checks: job.checks,
    });
    const report = checkProfile(palette, set);
    return report.checks.map((mixture, i) =>
      resultOf(palette, job.checks[i]!, mixture, report.wavelengths, job.means[i]),
    );
  });
}

function resultOf(
  palette: MixingPalette,
  check: Check,
  mixture: CheckedMixture,
  wavelengths: readonly number[],
  mean: MeanReading | undefined,
): CheckedOne {
  const onGrid = (values: readonly number[]): number[] =>
    interpolationRows(wavelengths, GRID_NM).map((to) => to.reduce((sum, w, i) => sum + w * values[i]!, 0));
  // A thin film has its prediction on its own card; its band stays in the region that is judged.
  const film = mixture.thickness !== undefined;
  const { measured, factor } = predictWithCovariance(palette, check.masses!);
  const predicted = film ? onGrid(mixture.reflectance) : measured;
  const { truth } = check;
  const measuredColour = truth
    ? colourOfReflectance(truth, 'reading', undefined, wavelengths)
    : mean
      ? colourOfReading(mean.values, mean.form)
      : null;
  if (!measuredColour) return null;
  const { deltaE00, inside95 } = mixture;
  return {
    predicted: reflectanceCurve(predicted, film ? [] : factor),
    predictedColour: colourOfReflectance(predicted, 'prediction'),
    measuredColour,
    channels: truth ? wavelengths.map((nm) => `${nm} nm`) : channelNames(mean!.form),
    measured: truth ? [...truth] : [...mean!.values],
    predictedReading: truth ? [...mixture.reflectance] : [...readingOf(responseRows(mean!.form), predicted)],
    deltaE00,
    inside95,
    sentence: say('from-prediction', {
      reads: truth ? 'Lies' : 'Reads',
      deltaE: deltaE00.toFixed(2),
      side: inside95 ? 'inside' : 'outside',
    }),
  };
}
