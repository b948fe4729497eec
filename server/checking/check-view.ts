import { responseRows, readingOf } from '../../src/fit/observe/response-rows.ts';
import { ciede2000 } from '../../src/colour/ciede2000.ts';
import { DEFAULT_WHITE } from '../../src/colour/illuminant.ts';
import { labRegion } from '../../src/fit/lab-region.ts';
import { predictWithCovariance } from '../../src/fit/predict.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import type { CheckAnswer } from '../api/checks.ts';
import { reflectanceCurve } from '../fitting/band-curve.ts';
import { foldHistory } from '../ladder/fold-history.ts';
import { judgedReadings } from '../ladder/open-ladder.ts';
import type { JudgedReading } from '../ladder/judge-readings.ts';
import type { CheckRow } from '../store/checks.ts';
import { historyOf } from '../store/history.ts';
import type { Db } from '../store/open-store.ts';
import { currentProfile } from '../store/profiles.ts';
import { swatchOfCheck } from '../store/swatches.ts';
import { channelNames, colourOfReading, colourOfReflectance } from '../views/colour-view.ts';
import { meanReading, readingView } from '../views/reading-view.ts';
import { profileIn } from '../routes/profiles.ts';

/** A check with its readings and, where there is a profile, predicted against measured. */
export function checkView(db: Db, row: CheckRow): CheckAnswer {
  const swatch = swatchOfCheck(db, row.id);
  const folded = foldHistory(historyOf(db, { checkId: row.id }));
  const { readings } = swatch ? judgedReadings(db, swatch.id, folded, 3) : { readings: [] };
  const profileRow = currentProfile(db, row.palette_id);
  const masses = JSON.parse(row.masses) as Record<string, number>;
  const outcome = profileRow
    ? resultOf(row, profileRow.id, profileIn(profileRow), masses, readings)
    : 'This palette has no constants yet; fit its ladders to see a prediction.';
  return {
    id: row.id,
    paletteId: row.palette_id,
    title: row.title,
    masses,
    note: row.note,
    createdAt: row.created_at,
    readings: readings.map(readingView),
    result: typeof outcome === 'string' ? null : outcome,
    sentence: typeof outcome === 'string' ? outcome : outcome.sentence,
  };
}

type Result = NonNullable<CheckAnswer['result']>;

function resultOf(
  row: CheckRow,
  profileId: string,
  profile: PaletteProfile,
  masses: Readonly<Record<string, number>>,
  readings: readonly JudgedReading[],
): Result | string {
  const { film = 'opaque' } = JSON.parse(row.film) as { film?: unknown };
  if (film !== 'opaque')
    return 'This is a thin film over a card; "tintladder check" compares it from its file.';
  const mean = meanReading(readings);
  if (!mean)
    return row.truth
      ? 'This check holds a known truth and no reading; "tintladder check" compares it.'
      : 'Read the mixture to compare it with its prediction.';
  const missing = Object.keys(masses).filter(
    (id) => masses[id]! > 0 && !profile.tubes.some((t) => t.id === id),
  );
  if (missing.length > 0)
    return `The profile has no constants for ${missing.join(', ')}; fit again with its ladder.`;
  const { form } = mean.like;
  if (form.geometry !== profile.geometry) {
    return `It was read at ${form.geometry} and the profile is for ${profile.geometry}; read it with the head of the ladder.`;
  }
  const { measured, factor } = predictWithCovariance(paletteOf(profile), masses);
  const predictedReading = [...readingOf(responseRows(form), measured)];
  const measuredColour = colourOfReading(mean.values, form);
  const predictedAsRead = colourOfReading(predictedReading, form);
  if (!measuredColour || !predictedAsRead)
    return 'The reading has too few channels for a colour; read it with more.';
  // Both through the instrument's own channels, so that bands are compared with bands.
  const white = `${measuredColour.white.illuminant}/${measuredColour.white.observer}` as const;
  const deltaE00 = ciede2000({ ...measuredColour.Lab, white }, { ...predictedAsRead.Lab, white });
  const region = labRegion(measured, factor, form.kind === 'tristimulus' ? white : DEFAULT_WHITE);
  const shift = (key: 'L' | 'a' | 'b'): number =>
    region.lab[key] + measuredColour.Lab[key] - predictedAsRead.Lab[key];
  const inside95 = region.contains({ L: shift('L'), a: shift('a'), b: shift('b') });
  return {
    profileId,
    predicted: reflectanceCurve(measured, factor),
    predictedColour: colourOfReflectance(measured, 'prediction'),
    measuredColour,
    channels: channelNames(form),
    measured: [...mean.values],
    predictedReading,
    deltaE00,
    inside95,
    sentence: `Read ${deltaE00.toFixed(2)} CIEDE2000 from its prediction, ${inside95 ? 'inside' : 'outside'} the 95 % region.`,
  };
}
