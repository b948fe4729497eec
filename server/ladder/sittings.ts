/**
 * A film read wet and read again when dry was read at two sittings. They are judged apart and never averaged: one of
 * them is the rung, the other tells the drying shift.
 */
import type { ReadingRow } from '../store/readings.ts';

const DAY_MS = 86_400_000;
/** Readings within this of a sitting's first are of one sitting, in days. This project's choice. */
const ONE_SITTING = 1;
/** From this on a film counts as another even where the sitting before it was cut short: oil is touch dry in a week. */
const SURELY_LATER = 7;

export interface Sat {
  /** 0 for the first. */
  readonly sitting: number;
  /** Of the film when it was read, days; null where nobody said when it was drawn down. */
  readonly ageDays: number | null;
}

export interface Sittings {
  readonly of: ReadonlyMap<string, Sat>;
  /** The sitting that is the rung: the first that is full, else the last. */
  readonly main: number;
  readonly count: number;
}

type Row = Pick<ReadingRow, 'id' | 'taken_at' | 'raw' | 'form_id' | 'over_what'>;

/**
 * @param rows oldest first
 * @param pulledOn ISO date the film was drawn down; undefined where nobody said
 * @param wanted readings that make a sitting full
 * @param counts whether a reading counts towards that
 */
export function sittingsOf(
  rows: readonly Row[],
  pulledOn: string | undefined,
  wanted: number,
  counts: (id: string) => boolean,
): Sittings {
  const of = new Map<string, Sat>();
  const origin = rows[0] ? Date.parse(pulledOn ?? rows[0].taken_at) : 0;
  let sitting = 0;
  let began = 0;
  const kept: number[] = [];
  rows.forEach((row, i) => {
    const stated = statedAge(row);
    const elapsed = Math.max(0, (Date.parse(row.taken_at) - origin) / DAY_MS);
    const day = stated ?? elapsed;
    const since = day - began;
    if (i === 0) began = day;
    else if (since >= SURELY_LATER || (since > ONE_SITTING && (kept[sitting] ?? 0) >= wanted)) {
      sitting += 1;
      began = day;
    }
    if (counts(row.id)) kept[sitting] = (kept[sitting] ?? 0) + 1;
    const age = stated ?? (pulledOn === undefined ? null : elapsed);
    of.set(row.id, { sitting, ageDays: age === null ? null : Math.round(10 * age) / 10 });
  });
  const full = kept.findIndex((n) => (n ?? 0) >= wanted);
  return { of, main: full < 0 ? sitting : full, count: sitting + 1 };
}

/** Days, where the reading itself says so: one that was typed or came from a file. */
function statedAge({ raw }: Row): number | undefined {
  const { ageDays } = (JSON.parse(raw) ?? {}) as { ageDays?: unknown };
  return typeof ageDays === 'number' ? ageDays : undefined;
}
