import { createHash } from 'node:crypto';
import type { Backing, Check, ReadingNoise } from '../../src/calibrate/swatch-set/schema.ts';
import type { PaletteProfile } from '../../src/profile/schema.ts';
import type { ReadingForm } from '../api/readings.ts';
import { draftChecks, draftFileCards } from '../fitting/assemble-set.ts';
import { SetDraft } from '../fitting/set-draft.ts';
import { formOf } from '../ladder/open-ladder.ts';
import type { MixRunner } from '../mixing/mix-runner.ts';
import type { Db } from '../store/open-store.ts';
import { paletteFacts } from '../store/palette-facts.ts';
import type { CheckedOne, CheckJob, MeanReading } from './run-checks.ts';

/** Checks that are judged together: one, or those that are one drawdown over two cards. */
interface Unit {
  readonly form: ReadingForm;
  readonly noise: ReadingNoise | undefined;
  readonly backings: readonly Backing[];
  /** By the check's id in the store. */
  readonly checks: readonly (readonly [rowId: string, check: Check])[];
}

/** More results than any palette has checks; the oldest go first. */
const MOST_KEPT = 5000;

/**
 * What became of each check, worked out once for each profile and each state of its readings, and beside the server's
 * own thread.
 */
export class CheckResults {
  readonly #mixing: MixRunner;
  readonly #kept = new Map<string, ReadonlyMap<string, CheckedOne>>();

  constructor(mixing: MixRunner) {
    this.#mixing = mixing;
  }

  /** By the check's id in the store; those that the profile cannot foretell are missing. */
  async of(
    db: Db,
    paletteId: string,
    from: { readonly id: string; readonly document: string; readonly profile: PaletteProfile },
    wanted: ReadonlySet<string>,
    means: ReadonlyMap<string, MeanReading>,
  ): Promise<Map<string, CheckedOne>> {
    const results = new Map<string, CheckedOne>();
    const missing = new Map<string, Unit>();
    for (const unit of unitsOf(db, paletteId, from.profile)) {
      if (!unit.checks.some(([id]) => wanted.has(id))) continue;
      const own = unit.checks.map(([id]) => means.get(id));
      const key = keyOf([from.id, unit, own]);
      const kept = this.#kept.get(key);
      if (kept) for (const [id, result] of kept) results.set(id, result);
      else missing.set(key, unit);
    }
    if (missing.size === 0) return results;
    const jobs = [...missing.values()].map(({ checks, form, noise, backings }): CheckJob => ({
      form,
      noise,
      backings,
      checks: checks.map(([, check]) => check),
      means: checks.map(([id]) => means.get(id)),
    }));
    const answers = await this.#mixing.ask(from.document, { kind: 'checks', request: { jobs } });
    [...missing].forEach(([key, unit], u) => {
      const entry = new Map(unit.checks.map(([id], c) => [id, answers[u]![c]!] as const));
      this.#kept.set(key, entry);
      for (const [id, result] of entry) results.set(id, result);
    });
    for (const key of [...this.#kept.keys()].slice(0, Math.max(0, this.#kept.size - MOST_KEPT)))
      this.#kept.delete(key);
    return results;
  }
}

function keyOf(parts: unknown): string {
  return createHash('sha256').update(JSON.stringify(parts)).digest('base64');
}

function unitsOf(db: Db, paletteId: string, profile: PaletteProfile): Unit[] {
  const known = new Set(profile.tubes.map((tube) => tube.id));
  const { noise } = paletteFacts(db, paletteId);
  const seen = new Set<string>();
  const units: Unit[] = [];
  for (const formId of formsOf(db, paletteId)) {
    const form = formOf(db, formId);
    if (form.geometry !== profile.geometry) continue;
    const draft = new SetDraft(formId);
    draftFileCards(db, draft, paletteId);
    const rows = draftChecks(db, draft, paletteId);
    const groups = new Map<string, (readonly [string, Check])[]>();
    for (const check of draft.checks) {
      const rowId = rows.get(check.id)!;
      const foretold = Object.entries(check.masses!).every(([id, mass]) => mass === 0 || known.has(id));
      if (seen.has(rowId) || !foretold) continue;
      seen.add(rowId);
      const group = check.film === 'opaque' ? `check ${rowId}` : `drawdown ${check.film.drawdown}`;
      groups.set(group, [...(groups.get(group) ?? []), [rowId, check]]);
    }
    for (const checks of groups.values()) {
      const thin = checks.some(([, check]) => check.film !== 'opaque');
      units.push({ form, noise, backings: thin ? draft.backings : [], checks });
    }
  }
  return units;
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
