import { judgeRepeats, type RepeatsVerdict } from '../../src/calibrate/repeats/judge-repeats.ts';
import type { ReadingForm } from '../api/readings.ts';
import type { BlockVerdict } from '../store/block-verdicts.ts';
import type { ReadingRow } from '../store/readings.ts';
import { channelNames } from '../views/colour-view.ts';
import type { Folded } from './fold-history.ts';

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
}

/** Readings of one form over one ground, judged together. */
export interface JudgedGroup {
  readonly formId: string;
  readonly over: ReadingRow['over_what'];
  readonly verdict: RepeatsVerdict;
}

export interface Judged {
  readonly readings: readonly JudgedReading[];
  readonly groups: readonly JudgedGroup[];
}

/**
 * What became of each reading of one swatch. What the painter undid or decided stands; the rest is judged by scatter
 * among readings of the same form over the same ground. Readings that came in a whole file are kept as the file has them.
 * @param wanted how many kept readings the swatch asks for
 */
export function judgeReadings(readings: readonly StoredReading[], folded: Folded, wanted: number): Judged {
  const groups = new Map<string, StoredReading[]>();
  for (const reading of readings) {
    const { id, form_id: formId, over_what: over } = reading.row;
    if (!folded.read.has(id) || folded.takenBack.has(id) || folded.decided.get(id)?.keep === false) continue;
    if (reading.verdict?.accepted === false && !folded.decided.has(id)) continue;
    const key = `${formId} ${over}`;
    groups.set(key, [...(groups.get(key) ?? []), reading]);
  }
  const sentBack = new Map<string, string>();
  const verdicts = [...groups.values()].map((group): JudgedGroup => {
    const { row, form } = group[0]!;
    const verdict = judgeRepeats(
      group.map((r) => r.values),
      { channels: channelNames(form), wanted },
    );
    for (const far of verdict.sentBack) sentBack.set(group[far.index]!.row.id, far.reason);
    return { formId: row.form_id, over: row.over_what, verdict };
  });
  return { readings: readings.map((reading) => withState(reading, folded, sentBack)), groups: verdicts };
}

function withState(
  reading: StoredReading,
  folded: Folded,
  sentBack: ReadonlyMap<string, string>,
): JudgedReading {
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
