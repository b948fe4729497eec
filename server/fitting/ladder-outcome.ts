import type { Ladder } from '../api/ladders.ts';
import type { FitResult } from '../api/fits.ts';
import type { OpenLadder } from '../ladder/open-ladder.ts';
import { fitsOf, readingIdsOfFit } from '../store/fits.ts';
import type { Db } from '../store/open-store.ts';

export interface LadderOutcome {
  /** The newest complete fit used every reading this ladder keeps now. */
  readonly fitted: boolean;
  /** "reads like 1:3.4, not 1:4", by rung. */
  readonly verdicts: ReadonlyMap<string, string>;
  readonly suggestions: Ladder['suggestions'];
}

/** What the newest complete fit says about a ladder. */
export function ladderOutcome(db: Db, ladder: OpenLadder): LadderOutcome {
  const fit = fitsOf(db, ladder.row.palette_id).find((f) => f.state === 'complete' && f.result !== null);
  if (!fit) return { fitted: false, verdicts: new Map(), suggestions: [] };
  const used = new Set(readingIdsOfFit(db, fit.id));
  const kept = ladder.rungs.flatMap((r) => r.readings).filter((r) => r.state === 'kept');
  const fitted = kept.length > 0 && kept.every((r) => used.has(r.row.id) || r.row.form_id !== fit.form_id);
  const result = JSON.parse(fit.result!) as FitResult;
  const tube = result.tubes.find((t) => t.tubeId === ladder.row.tube_id);
  const verdicts = new Map<string, string>();
  for (const rung of tube?.rungs ?? []) {
    if (rung.rungId && rung.readsLike) verdicts.set(rung.rungId, rung.readsLike);
  }
  const suggestions = (tube?.suggestions ?? []).map((sentence) => ({ rungId: null, sentence, gain: null }));
  return { fitted, verdicts, suggestions: fitted ? suggestions : [] };
}
