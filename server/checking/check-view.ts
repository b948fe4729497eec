import { GRID_NM } from '../../src/colour/grid.ts';
import { interpolationRows } from '../../src/colour/interpolation.ts';
import { readingOf, responseRows } from '../../src/fit/observe/response-rows.ts';
import { predictWithCovariance } from '../../src/fit/predict.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import type { CheckAnswer } from '../api/checks.ts';
import { reflectanceCurve } from '../fitting/band-curve.ts';
import { foldHistory } from '../ladder/fold-history.ts';
import type { JudgedReading } from '../ladder/judge-readings.ts';
import { judgedReadings } from '../ladder/open-ladder.ts';
import { profileIn } from '../routes/profiles.ts';
import type { CheckRow } from '../store/checks.ts';
import { historyOf } from '../store/history.ts';
import type { Db } from '../store/open-store.ts';
import { currentProfile } from '../store/profiles.ts';
import { swatchOfCheck } from '../store/swatches.ts';
import { channelNames, colourOfReading, colourOfReflectance } from '../views/colour-view.ts';
import { meanReading, readingView } from '../views/reading-view.ts';
import { type CheckedRow, checkResults } from './check-results.ts';

/** Checks with their readings and, where the current profile can foretell them, predicted against measured. */
export function checkViews(db: Db, paletteId: string, rows: readonly CheckRow[]): CheckAnswer[] {
  const row = currentProfile(db, paletteId);
  const profile = row ? profileIn(row) : undefined;
  const results = profile ? checkResults(db, paletteId, profile) : new Map<string, CheckedRow>();
  return rows.map((check) => {
    const swatch = swatchOfCheck(db, check.id);
    const folded = foldHistory(historyOf(db, { checkId: check.id }));
    const readings = swatch ? judgedReadings(db, swatch.id, folded, 3).readings : [];
    const masses = JSON.parse(check.masses) as Record<string, number>;
    const checked = results.get(check.id);
    const result = checked && profile ? resultOf(row!.id, profile, masses, checked, readings) : null;
    return {
      id: check.id,
      paletteId: check.palette_id,
      title: check.title,
      masses,
      note: check.note,
      createdAt: check.created_at,
      readings: readings.map(readingView),
      result,
      sentence: result?.sentence ?? whyNot(check, profile, masses, readings),
    };
  });
}

type Result = NonNullable<CheckAnswer['result']>;

function resultOf(
  profileId: string,
  profile: PaletteProfile,
  masses: Readonly<Record<string, number>>,
  { mixture, wavelengths, truth }: CheckedRow,
  readings: readonly JudgedReading[],
): Result | null {
  const onGrid = (values: readonly number[]): number[] =>
    interpolationRows(wavelengths, GRID_NM).map((to) => to.reduce((sum, w, i) => sum + w * values[i]!, 0));
  // A thin film has its prediction on its own card; its band stays in the region that is judged.
  const film = mixture.thickness !== undefined;
  const { measured, factor } = predictWithCovariance(paletteOf(profile), masses);
  const predicted = film ? onGrid(mixture.reflectance) : measured;
  const mean = meanReading(readings);
  const measuredColour = truth
    ? colourOfReflectance(truth, 'reading', undefined, wavelengths)
    : mean
      ? colourOfReading(mean.values, mean.like.form)
      : null;
  if (!measuredColour) return null;
  const { deltaE00, inside95 } = mixture;
  return {
    profileId,
    predicted: reflectanceCurve(predicted, film ? [] : factor),
    predictedColour: colourOfReflectance(predicted, 'prediction'),
    measuredColour,
    channels: truth ? wavelengths.map((nm) => `${nm} nm`) : channelNames(mean!.like.form),
    measured: truth ? [...truth] : [...mean!.values],
    predictedReading: truth
      ? [...mixture.reflectance]
      : [...readingOf(responseRows(mean!.like.form), predicted)],
    deltaE00,
    inside95,
    sentence: `${truth ? 'Lies' : 'Reads'} ${deltaE00.toFixed(2)} CIEDE2000 from its prediction, ${inside95 ? 'inside' : 'outside'} the 95 % region.`,
  };
}

function whyNot(
  check: CheckRow,
  profile: PaletteProfile | undefined,
  masses: Readonly<Record<string, number>>,
  readings: readonly JudgedReading[],
): string {
  if (!profile) return 'This palette has no constants yet; fit its ladders to see a prediction.';
  const missing = Object.keys(masses).filter(
    (id) => masses[id]! > 0 && !profile.tubes.some((t) => t.id === id),
  );
  if (missing.length > 0)
    return `The profile has no constants for ${missing.join(', ')}; fit again with its ladder.`;
  const kept = readings.filter((r) => r.state === 'kept');
  if (kept.length === 0 && !check.truth) return 'Read the mixture to compare it with its prediction.';
  const other = kept.find((r) => r.form.geometry !== profile.geometry);
  if (other)
    return `It was read at ${other.form.geometry} and the profile is for ${profile.geometry}; read it with the head of the ladder.`;
  return 'The reading has too few channels for a colour; read it with more.';
}
