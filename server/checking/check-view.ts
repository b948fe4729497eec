import type { PaletteProfile } from '../../src/profile/schema.ts';
import type { CheckAnswer } from '../api/checks.ts';
import type { Bench } from '../bench.ts';
import { CHECK_READINGS } from '../fitting/assemble-set.ts';
import { foldHistory } from '../ladder/fold-history.ts';
import type { JudgedReading } from '../ladder/judge-readings.ts';
import { judgedReadings } from '../ladder/open-ladder.ts';
import { profileIn } from '../routes/profiles.ts';
import type { CheckRow } from '../store/checks.ts';
import { historyOf } from '../store/history.ts';
import { currentProfile } from '../store/profiles.ts';
import { swatchOfCheck } from '../store/swatches.ts';
import { meanReading, readingView } from '../views/reading-view.ts';
import type { MeanReading } from './run-checks.ts';
import { say } from '../api/sentences/checks.ts';

/** Checks with their readings and, where the current profile can foretell them, predicted against measured. */
export async function checkViews(
  { db, checking }: Pick<Bench, 'db' | 'checking'>,
  paletteId: string,
  rows: readonly CheckRow[],
): Promise<CheckAnswer[]> {
  const row = currentProfile(db, paletteId);
  const profile = row ? profileIn(row) : undefined;
  const read = rows.map((check) => {
    const swatch = swatchOfCheck(db, check.id);
    const folded = foldHistory(historyOf(db, { checkId: check.id }));
    return { check, readings: swatch ? judgedReadings(db, swatch.id, folded, CHECK_READINGS).readings : [] };
  });
  const means = new Map(
    read.flatMap(({ check, readings }): (readonly [string, MeanReading])[] => {
      const mean = meanReading(readings);
      return mean ? [[check.id, { values: mean.values, form: mean.like.form }]] : [];
    }),
  );
  const wanted = new Set(rows.map((check) => check.id));
  const from = row && profile ? { id: row.id, document: row.document, profile } : undefined;
  const results = from ? await checking.of(db, paletteId, from, wanted, means) : undefined;
  return read.map(({ check, readings }) => {
    const masses = JSON.parse(check.masses) as Record<string, number>;
    const checked = results?.get(check.id);
    const result = checked && from ? { profileId: from.id, ...checked } : null;
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

function whyNot(
  check: CheckRow,
  profile: PaletteProfile | undefined,
  masses: Readonly<Record<string, number>>,
  readings: readonly JudgedReading[],
): string {
  if (!profile) return say('no-constants');
  const missing = Object.keys(masses).filter(
    (id) => masses[id]! > 0 && !profile.tubes.some((t) => t.id === id),
  );
  if (missing.length > 0) return say('no-constants-for', { tubes: missing.join(', ') });
  const kept = readings.filter((r) => r.state === 'kept');
  if (kept.length === 0 && !check.truth) return say('read-the-mixture');
  const other = kept.find((r) => r.form.geometry !== profile.geometry);
  if (other) return say('other-geometry', { read: other.form.geometry, profile: profile.geometry });
  return say('too-few-channels');
}
