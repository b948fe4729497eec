import { judgeRepeats, type RepeatsVerdict } from '../../src/calibrate/repeats/judge-repeats.ts';
import type { ReadingForm } from '../api/readings.ts';
import type { BlockVerdict } from '../store/block-verdicts.ts';
import type { ReadingRow } from '../store/readings.ts';
import { channelNames } from '../views/colour-view.ts';
import type { Folded } from './fold-history.ts';
import { type Sittings, sittingsOf } from './sittings.ts';

export interface StoredReading {
  readonly row: ReadingRow;
  readonly values: readonly number[];
  readonly form: ReadingForm;
  /** From the white that closed its block; missing while that is to come, and where there are no whites. */
  readonly verdict?: BlockVerdict | undefined;
}

export interface JudgedReading extends StoredReading {
  readonly state: 'kept' | 'sent back' | 'taken back';
  readonly reason: string;
  readonly decidedBy: 'program' | 'painter';
  /** Age of the film when it was read, days; null where nobody said when it was drawn down. */
  readonly ageDays: number | null;
  /** The sitting it belongs to, and whether that is the one that makes the rung; others tell how the film dried. */
  readonly sitting: number;
  readonly main: boolean;
}

/** Readings of one form over one ground, judged together. */
export interface JudgedGroup {
  readonly formId: string;
  readonly over: ReadingRow['over_what'];
  readonly main: boolean;
  readonly verdict: RepeatsVerdict;
}

export interface Judged {
  readonly readings: readonly JudgedReading[];
  readonly groups: readonly JudgedGroup[];
}

/**
 * What became of each reading of one swatch. What the painter undid or decided stands; the rest is judged by scatter
 * among readings of the same form over the same ground at the same sitting. Readings that came in a whole file are kept as the file has them.
 * @param wanted how many kept readings the swatch asks for
 */
export function judgeReadings(
  readings: readonly StoredReading[],
  folded: Folded,
  wanted: number,
  pulledOn?: string,
): Judged {
  const out = (id: string): boolean => folded.takenBack.has(id) || folded.decided.get(id)?.keep === false;
  const sit = (sentBack: ReadonlyMap<string, string>): Sittings =>
    sittingsOf(
      readings.map((r) => r.row),
      pulledOn,
      wanted,
      (id) => !out(id) && !sentBack.has(id),
    );
  const inFit = readings.filter(
    ({ row, verdict }) =>
      folded.read.has(row.id) && !out(row.id) && (verdict?.accepted !== false || folded.decided.has(row.id)),
  );
  let sittings = sit(new Map());
  let judged = judgeGroups(inFit, sittings, wanted);
  if (judged.sentBack.size > 0 && sittings.count > 1) {
    // A sitting that scatter left short of readings may be filled on another day.
    sittings = sit(judged.sentBack);
    judged = judgeGroups(inFit, sittings, wanted);
  }
  const { sentBack, groups } = judged;
  return {
    readings: readings.map((reading) => {
      const { sitting, ageDays } = sittings.of.get(reading.row.id)!;
      return {
        ...withState(reading, folded, sentBack),
        ageDays,
        sitting,
        main: sitting === sittings.main,
      };
    }),
    groups,
  };
}

/** By scatter, among readings of one form over one ground at one sitting. */
function judgeGroups(
  readings: readonly StoredReading[],
  sittings: Sittings,
  wanted: number,
): { groups: JudgedGroup[]; sentBack: Map<string, string> } {
  const byKey = new Map<string, StoredReading[]>();
  for (const reading of readings) {
    const { id, form_id: formId, over_what: over } = reading.row;
    const key = `${formId} ${over} ${sittings.of.get(id)!.sitting}`;
    byKey.set(key, [...(byKey.get(key) ?? []), reading]);
  }
  const sentBack = new Map<string, string>();
  const groups = [...byKey.values()].map((group): JudgedGroup => {
    const { row, form } = group[0]!;
    const verdict = judgeRepeats(
      group.map((r) => r.values),
      { channels: channelNames(form), wanted },
    );
    for (const far of verdict.sentBack) sentBack.set(group[far.index]!.row.id, far.reason);
    const main = sittings.of.get(row.id)!.sitting === sittings.main;
    return { formId: row.form_id, over: row.over_what, main, verdict };
  });
  return { groups, sentBack };
}

function withState(
  reading: StoredReading,
  folded: Folded,
  sentBack: ReadonlyMap<string, string>,
): Omit<JudgedReading, 'ageDays' | 'sitting' | 'main'> {
  const { id } = reading.row;
  if (folded.takenBack.has(id))
    return { ...reading, state: 'taken back', reason: 'Undone.', decidedBy: 'painter' };
  const decided = folded.decided.get(id);
  if (decided) {
    return {
      ...reading,
      state: decided.keep ? 'kept' : 'sent back',
      reason: decided.reason,
      decidedBy: 'painter',
    };
  }
  const reason = reading.verdict?.accepted === false ? reading.verdict.reason : sentBack.get(id);
  return reason === undefined
    ? { ...reading, state: 'kept', reason: '', decidedBy: 'program' }
    : { ...reading, state: 'sent back', reason, decidedBy: 'program' };
}
