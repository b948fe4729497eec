import { SwatchSetProblem } from '../../src/calibrate/swatch-set/problem.ts';
import type { Bench } from '../bench.ts';
import { openLadder, type OpenLadder } from '../ladder/open-ladder.ts';
import { newId } from '../store/ids.ts';
import { VERSION } from '../version.ts';
import { assembleSet, type AssembledSet } from './assemble-set.ts';
import type { Suggestion } from './suggestions.ts';

/**
 * What the next measurement of a ladder would buy, from what is read so far: the tube and its white are fitted for this
 * question, beside the server's own thread, and nothing is kept. Empty before both have a masstone.
 * @throws HttpProblem 404
 */
export async function ladderAdvice(bench: Bench, ladderId: string): Promise<Suggestion[]> {
  const ladder = openLadder(bench.db, ladderId);
  const assembled = assembledOf(bench, ladder);
  if (!assembled?.set.swatches.some(({ id }) => assembled.origins.get(id)?.ladder_id === ladderId)) return [];
  const { checks: _never, ...set } = assembled.set;
  const rungs = Object.fromEntries(
    [...assembled.origins].map(([id, row]) => [id, { rungId: row.id, name: row.name }]),
  );
  const message = await bench.fits.start(
    newId('advice'),
    { set: { ...set, checks: [] }, created: bench.now(), version: VERSION, title: '', provenance: {}, rungs },
    () => undefined,
  ).done;
  if (message?.kind !== 'complete') return [];
  const tube = message.result.tubes.find((t) => t.tubeId === ladder.row.tube_id);
  return (tube?.suggestions ?? []).filter((s) => s.next !== null);
}

function assembledOf({ db }: Bench, ladder: OpenLadder): AssembledSet | undefined {
  const last = ladder.rungs.flatMap((rung) => rung.readings).findLast((r) => r.state === 'kept');
  if (!last) return undefined;
  try {
    return assembleSet(db, ladder.row.palette_id, last.row.form_id, { takesOpen: true, ladder });
  } catch (error) {
    if (error instanceof SwatchSetProblem) return undefined;
    throw error;
  }
}
