import { massesAgainstName } from '../../src/calibrate/ladder/wrong-way-round.ts';
import type { Taken } from '../api/ladders.ts';
import type { Finding } from '../api/words.ts';
import { conflict, notFound, unusable } from '../problem.ts';
import { addHistory } from '../store/history.ts';
import type { Db } from '../store/open-store.ts';
import { addPulled } from '../store/pulled.ts';
import { addReading, formIdOf, type ReadingRow } from '../store/readings.ts';
import type { Deed } from './fold-history.ts';
import { openLadder, type OpenLadder, type OpenRung } from './open-ladder.ts';
import { say } from '../api/sentences/ladders.ts';

/** A reading on its way into the store. */
export interface IncomingReading {
  readonly source: ReadingRow['source'];
  readonly form: unknown;
  readonly values: readonly number[];
  readonly raw: unknown;
}

/** @throws HttpProblem 404 */
export function rungOf(ladder: OpenLadder, rungId: string): OpenRung {
  const rung = [...ladder.rungs, ...ladder.cards].find((r) => r.row.id === rungId);
  if (!rung) throw notFound(say('no-rung', { id: rungId }));
  return rung;
}

/** @throws HttpProblem when the ladder was put aside */
export function holdOpen(ladder: OpenLadder): void {
  if (ladder.folded.closed) throw conflict(say('put-aside'));
}

/** Keeps a reading and its place in the history, both or neither; acknowledged only once it is on the disk. */
export function keepReading(
  db: Db,
  whose: { readonly ladderId: string } | { readonly checkId: string },
  swatchId: string,
  over: ReadingRow['over_what'],
  reading: IncomingReading,
  at: string,
): string {
  return db.transaction(() => {
    const formId = formIdOf(db, reading.form, at);
    const { source, values, raw } = reading;
    const { id } = addReading(db, { swatchId, formId, source, over, values, raw, at });
    addHistory(db, whose, { kind: 'reading', readingId: id, swatchId }, at);
    return id;
  })();
}

/** Grams as weighed. @throws HttpProblem when they are not one per part */
export function weighRung(
  db: Db,
  ladder: OpenLadder,
  rungId: string,
  grams: readonly number[],
  at: string,
): Finding[] {
  holdOpen(ladder);
  const rung = rungOf(ladder, rungId);
  if (grams.length !== rung.parts.length) {
    throw unusable(
      say('pours', { rung: rung.row.name, pours: rung.parts.length, masses: grams.length }),
      'grams',
    );
  }
  addHistory(db, { ladderId: ladder.row.id }, { kind: 'weigh', swatchId: rungId, grams }, at);
  return weighingFindings(rung, grams, ladder.row.tube_id);
}

/** The day the films were drawn down. @throws HttpProblem for a day after the first reading */
export function sayPulled(
  db: Db,
  ladder: OpenLadder,
  day: string,
  rungId: string | undefined,
  at: string,
): void {
  holdOpen(ladder);
  const rungs = rungId === undefined ? ladder.rungs : [rungOf(ladder, rungId)];
  for (const rung of rungs) {
    const first = rung.readings[0]?.row.taken_at.slice(0, 10);
    if (day > at.slice(0, 10) || (first !== undefined && day > first)) {
      throw unusable(
        say('pulled-after', { rung: rung.row.name, read: first ?? at.slice(0, 10), pulled: day }),
        'pulledOn',
      );
    }
  }
  db.transaction(() => rungs.forEach((rung) => addPulled(db, rung.row.id, day, at)))();
}

/** Masses that look swapped, in words. */
export function weighingFindings(
  rung: OpenRung,
  grams: readonly number[] | undefined,
  tubeId: string,
): Finding[] {
  if (!grams || rung.parts.length !== 2 || rung.parts[0]!.tubeId !== tubeId) return [];
  const swapped = massesAgainstName(rung.row.name, grams[0]!, grams[1]!);
  return swapped?.swapped ? [{ level: 'warning', code: 'swapped', sentence: swapped.sentence }] : [];
}

export function decide(
  db: Db,
  ladder: OpenLadder,
  readingId: string,
  keep: boolean,
  reason: string,
  at: string,
): void {
  holdOpen(ladder);
  const reading = [...ladder.rungs, ...ladder.cards]
    .flatMap((r) => r.readings)
    .find((r) => r.row.id === readingId);
  if (!reading) throw notFound(say('no-reading', { id: readingId }));
  if (reading.state === 'taken back') throw conflict(say('undone'));
  addHistory(db, { ladderId: ladder.row.id }, { kind: 'decide', readingId, keep, reason }, at);
}

export function undo(db: Db, ladder: OpenLadder, at: string): void {
  holdOpen(ladder);
  if (!ladder.folded.undo) throw conflict(say('nothing-to-undo'));
  addHistory(db, { ladderId: ladder.row.id }, { kind: 'undo' }, at);
}

export function redo(db: Db, ladder: OpenLadder, at: string): void {
  holdOpen(ladder);
  if (!ladder.folded.redo) throw conflict(say('nothing-to-redo'));
  addHistory(db, { ladderId: ladder.row.id }, { kind: 'redo' }, at);
}

export function close(db: Db, ladder: OpenLadder, at: string): void {
  if (!ladder.folded.closed) addHistory(db, { ladderId: ladder.row.id }, { kind: 'close' }, at);
}

/** A deed in words: "the third reading of the 1:4". */
export function deedWords(ladder: OpenLadder, deed: Deed | undefined): string | null {
  if (!deed) return null;
  const all = [...ladder.rungs, ...ladder.cards];
  if (deed.kind === 'weigh')
    return say('weighing', { rung: all.find((r) => r.row.id === deed.swatchId)?.row.name ?? 'rung' });
  const rung = all.find((r) => r.readings.some((x) => x.row.id === deed.readingId));
  const n = (rung?.readings.findIndex((x) => x.row.id === deed.readingId) ?? 0) + 1;
  const which = say('reading', { number: n, rung: rung?.row.name ?? 'rung' });
  if (deed.kind === 'reading') return which;
  return deed.keep ? say('keeping', { reading: which }) : say('sending-back', { reading: which });
}

export function reopened(db: Db, ladder: OpenLadder): OpenLadder {
  return openLadder(db, ladder.row.id);
}

export type { Taken };
