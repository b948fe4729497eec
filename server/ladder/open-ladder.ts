import type { LadderRequest } from '../api/ladders.ts';
import { notFound } from '../problem.ts';
import { blockVerdictOf } from '../store/block-verdicts.ts';
import { historyOf } from '../store/history.ts';
import { ladderById, type LadderRow } from '../store/ladders.ts';
import type { Db } from '../store/open-store.ts';
import { pulledOn } from '../store/pulled.ts';
import { formById, type ReadingRow, readingsOfSwatch } from '../store/readings.ts';
import { type SwatchRow, swatchesOfLadder } from '../store/swatches.ts';
import type { ReadingForm } from '../api/readings.ts';
import { foldHistory, type Folded } from './fold-history.ts';
import { type Judged, type JudgedGroup, judgeReadings, type JudgedReading } from './judge-readings.ts';
import { say } from '../api/sentences/ladders.ts';

/** A planned or weighed part as kept with a rung. */
export interface PlannedPart {
  readonly tubeId: string | null;
  readonly fromSwatchId: string | null;
  readonly grams: number;
}

/** What a ladder was started with. */
export interface KeptPlan {
  readonly request: LadderRequest;
  readonly method: 'straight' | 'serial' | 'mixed';
  readonly sentences: readonly string[];
  readonly tubeGrams: number;
  readonly whiteGrams: number;
  readonly worstRelativeSigma: number;
}

export interface OpenRung {
  readonly row: SwatchRow;
  readonly parts: readonly PlannedPart[];
  /** As weighed; undefined until it was. A pile of one part needs no scale. */
  readonly grams: readonly number[] | undefined;
  readonly readings: readonly JudgedReading[];
  readonly groups: readonly JudgedGroup[];
  /** ISO date the film was drawn down; undefined where nobody said. */
  readonly pulledOn: string | undefined;
}

/** A ladder with everything done on it, as its history says. */
export interface OpenLadder {
  readonly row: LadderRow;
  readonly plan: KeptPlan;
  readonly folded: Folded;
  readonly rungs: readonly OpenRung[];
  /** Bare cards, one swatch per side, when films over a card are read. */
  readonly cards: readonly OpenRung[];
}

/** @throws HttpProblem 404 */
export function openLadder(db: Db, id: string): OpenLadder {
  const row = ladderById(db, id);
  if (!row) throw notFound(say('no-ladder', { id }));
  const plan = JSON.parse(row.plan) as KeptPlan;
  const folded = foldHistory(historyOf(db, { ladderId: id }));
  const all = swatchesOfLadder(db, id).map((swatch): OpenRung => {
    const parts = JSON.parse(swatch.parts) as PlannedPart[];
    return {
      row: swatch,
      parts,
      grams: folded.grams.get(swatch.id) ?? (parts.length === 1 ? [parts[0]!.grams] : undefined),
      pulledOn: pulledOn(db, swatch.id),
      ...judgedReadings(db, swatch.id, folded, plan.request.repeats),
    };
  });
  return {
    row,
    plan,
    folded,
    rungs: all.filter((rung) => rung.row.kind === 'rung'),
    cards: all.filter((rung) => rung.row.kind === 'card'),
  };
}

/** The readings of a swatch with what became of each. */
export function judgedReadings(db: Db, swatchId: string, folded: Folded, wanted = 1): Judged {
  const rows = readingsOfSwatch(db, swatchId);
  return judgeReadings(
    rows.map((row) => {
      const verdict = blockVerdictOf(db, row.id);
      return { row, values: verdict?.values ?? valuesOf(row), form: formOf(db, row.form_id), verdict };
    }),
    folded,
    wanted,
    pulledOn(db, swatchId),
  );
}

/** As taken, on the opening white alone. */
export function valuesOf(row: ReadingRow): number[] {
  return JSON.parse(row.channel_values) as number[];
}

/** A form is never changed once it is kept, and a ladder asks for the same one at each of its readings. */
const forms = new WeakMap<Db, Map<string, ReadingForm>>();

export function formOf(db: Db, formId: string): ReadingForm {
  const here = forms.get(db) ?? new Map<string, ReadingForm>();
  forms.set(db, here);
  let form = here.get(formId);
  if (!form) {
    form = JSON.parse(formById(db, formId)!.description) as ReadingForm;
    here.set(formId, form);
  }
  return form;
}
