import { conflict } from '../problem.ts';
import type { Db } from '../store/open-store.ts';
import { say } from '../api/sentences/fitting.ts';

/**
 * The form most readings of a palette are in.
 * @throws HttpProblem when nothing was read yet
 */
export function usualForm(db: Db, paletteId: string): string {
  const row = db
    .prepare<[string], { form_id: string }>(
      `select form_id from reading join swatch on swatch.id = reading.swatch_id
       where swatch.palette_id = ? and swatch.kind <> 'check'
       group by form_id order by count(*) desc, max(reading.seq) desc limit 1`,
    )
    .get(paletteId);
  if (!row) throw conflict(say('nothing-read'));
  return row.form_id;
}
