import { readSwatchSet } from '../../src/calibrate/swatch-set/read.ts';
import { type CheckedMixture, checkProfile } from '../../src/mix/check/check-profile.ts';
import { paletteOf } from '../../src/profile/palette-of.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import { draftChecks, draftFileCards } from '../fitting/assemble-set.ts';
import { SetDraft } from '../fitting/set-draft.ts';
import { formOf } from '../ladder/open-ladder.ts';
import type { Db } from '../store/open-store.ts';
import { paletteFacts } from '../store/palette-facts.ts';

export interface CheckedRow {
  readonly mixture: CheckedMixture;
  /** The grid or the instrument's own wavelengths, which `mixture.reflectance` is on. */
  readonly wavelengths: readonly number[];
  /** What it was held against: the known truth, else the mean reading. */
  readonly truth: readonly number[] | undefined;
}

/** Every check of a palette that a profile can foretell, by the check's id; thin films drawdown by drawdown. */
export function checkResults(db: Db, paletteId: string, profile: PaletteProfile): Map<string, CheckedRow> {
  const results = new Map<string, CheckedRow>();
  const known = new Set(profile.tubes.map((tube) => tube.id));
  for (const formId of formsOf(db, paletteId)) {
    const form = formOf(db, formId);
    if (form.geometry !== profile.geometry) continue;
    const draft = new SetDraft(formId);
    draftFileCards(db, draft, paletteId);
    const rows = draftChecks(db, draft, paletteId);
    const checks = draft.checks.filter(
      (check) =>
        !results.has(rows.get(check.id)!) &&
        Object.entries(check.masses!).every(([id, mass]) => mass === 0 || known.has(id)),
    );
    if (checks.length === 0) continue;
    const { noise } = paletteFacts(db, paletteId);
    const set = readSwatchSet({
      format: 'swatch-set',
      version: 1,
      instrument: form,
      ...(noise ? { noise } : {}),
      backings: draft.backings,
      tubes: profile.tubes.map(({ id }) => ({ id, ...(id === profile.white ? { role: 'white' } : {}) })),
      swatches: [],
      checks,
    });
    const report = checkProfile(paletteOf(profile), set);
    for (const mixture of report.checks) {
      const truth = checks.find((check) => check.id === mixture.id)?.truth;
      results.set(rows.get(mixture.id)!, { mixture, wavelengths: report.wavelengths, truth });
    }
  }
  return results;
}

/** The forms checks were read in, most readings first; a file's truths go with the form of the file. */
function formsOf(db: Db, paletteId: string): string[] {
  return db
    .prepare<[string], { form_id: string }>(
      `select form_id from reading join swatch on swatch.id = reading.swatch_id
       where swatch.palette_id = ? group by form_id order by sum(swatch.kind = 'check') desc, count(*) desc`,
    )
    .all(paletteId)
    .map((row) => row.form_id);
}
