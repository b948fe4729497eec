import { rungName } from '../../src/calibrate/ladder/rung-name.ts';
import type { Ladder } from '../api/ladders.ts';
import type { FitResult } from '../api/fits.ts';
import type { OpenLadder } from '../ladder/open-ladder.ts';
import { fitsOf, readingIdsOfFit } from '../store/fits.ts';
import { lastWeighed } from '../store/history.ts';
import type { Db } from '../store/open-store.ts';
import { suggestionsOf } from './stored-suggestions.ts';
import { say } from '../api/sentences/fitting.ts';

export interface LadderOutcome {
  /** The newest complete fit used every reading this ladder keeps now, with the grams it has now. */
  readonly fitted: boolean;
  /** "reads like 1:3.4, not 1:4", by rung. */
  readonly verdicts: ReadonlyMap<string, string>;
  /** Rungs whose two masses look to have been noted the wrong way round. */
  readonly swapped: ReadonlySet<string>;
  readonly suggestions: Ladder['suggestions'];
}

const NOTHING: LadderOutcome = { fitted: false, verdicts: new Map(), swapped: new Set(), suggestions: [] };

/** What the newest complete fit says about a ladder. */
export function ladderOutcome(db: Db, ladder: OpenLadder): LadderOutcome {
  const fit = fitsOf(db, ladder.row.palette_id).find((f) => f.state === 'complete' && f.result !== null);
  if (!fit) return NOTHING;
  const weighed = lastWeighed(db, ladder.row.id);
  // Weighed anew since, the rungs are not those that were fitted.
  if (weighed !== undefined && weighed > fit.started_at) return NOTHING;
  const used = new Set(readingIdsOfFit(db, fit.id));
  const kept = ladder.rungs.flatMap((r) => r.readings).filter((r) => r.state === 'kept' && r.main);
  const fitted = kept.length > 0 && kept.every((r) => used.has(r.row.id) || r.row.form_id !== fit.form_id);
  const result = JSON.parse(fit.result!) as FitResult;
  const tube = result.tubes.find((t) => t.tubeId === ladder.row.tube_id);
  const verdicts = new Map<string, string>();
  for (const rung of tube?.rungs ?? []) {
    if (rung.rungId && rung.readsLike) verdicts.set(rung.rungId, rung.readsLike);
  }
  const swapped = new Set<string>();
  // A fit of an earlier version of this program has none.
  for (const rung of tube?.notBelieved ?? []) {
    if (rung.rungId === null) continue;
    if (rung.readsLike !== null && rung.weighed !== null) {
      const name = (parts: number): string => rungName(Number(parts.toPrecision(2)));
      verdicts.set(
        rung.rungId,
        say('reads-like-left-out', { like: name(rung.readsLike), weighed: name(rung.weighed) }),
      );
    } else verdicts.set(rung.rungId, say('not-believed'));
    if (rung.swapped) swapped.add(rung.rungId);
  }
  return { fitted, verdicts, swapped, suggestions: fitted && tube ? suggestionsOf(tube) : [] };
}
