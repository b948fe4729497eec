import type { Reading } from '../api/readings.ts';
import type { JudgedReading } from '../ladder/judge-readings.ts';
import { colourOfReading } from './colour-view.ts';

/** A stored reading as the pages see it. */
export function readingView(reading: JudgedReading): Reading {
  const { row, form } = reading;
  return {
    id: row.id,
    takenAt: row.taken_at,
    ageDays: reading.ageDays,
    again: !reading.main,
    source: row.source,
    formId: row.form_id,
    kind: form.kind,
    over: row.over_what,
    values: [...reading.values],
    state: reading.state,
    reason: reading.reason,
    decidedBy: reading.decidedBy,
    colour: colourOfReading(reading.values, form),
  };
}

/** Mean of the kept readings of one sitting in the form most of them are in; null without any. */
export function meanReading(
  readings: readonly JudgedReading[],
): { values: number[]; like: JudgedReading } | null {
  const kept = readings.filter((r) => r.state === 'kept' && r.main && r.row.over_what === 'opaque');
  const byForm = new Map<string, JudgedReading[]>();
  for (const reading of kept) {
    byForm.set(reading.row.form_id, [...(byForm.get(reading.row.form_id) ?? []), reading]);
  }
  const most = [...byForm.values()].sort((a, b) => b.length - a.length)[0];
  if (!most?.[0]) return null;
  const values = most[0].values.map((_, c) => most.reduce((sum, r) => sum + r.values[c]!, 0) / most.length);
  return { values, like: most[0] };
}
