import type { Fit, FitResult } from '../api/fits.ts';
import type { Bench } from '../bench.ts';
import { conflict, notFound } from '../problem.ts';
import { addFit, fitById, type FitRow, fitsOf, readingIdsOfFit, setFitState } from '../store/fits.ts';
import { newId } from '../store/ids.ts';
import type { Db } from '../store/open-store.ts';
import { paletteById } from '../store/palettes.ts';
import { addProfile, makeProfileCurrent, profileById, profileOfFit } from '../store/profiles.ts';
import { VERSION } from '../version.ts';
import { assembleSet } from './assemble-set.ts';
import type { FitMessage } from './fit-job.ts';
import { suggestionsOf } from './stored-suggestions.ts';
import { usualForm } from './usual-form.ts';
import { say } from '../api/sentences/fitting.ts';

const progressOf = new Map<string, Fit['progress']>();

export function fitView(db: Db, row: FitRow): Fit {
  const done = row.state === 'complete';
  return {
    id: row.id,
    paletteId: row.palette_id,
    state: row.state,
    startedAt: row.started_at,
    finishedAt: row.finished_at,
    progress: progressOf.get(row.id) ?? { done: done ? 1 : 0, sentence: done ? say('done') : row.sentence },
    sentence: row.sentence,
    profileId: profileOfFit(db, row.id)?.id ?? null,
    readingIds: readingIdsOfFit(db, row.id),
    settings: JSON.parse(row.settings) as Record<string, unknown>,
    leftOut: JSON.parse(row.left_out) as string[],
  };
}

/** @throws HttpProblem 404 */
export function fitOr404(db: Db, id: string): FitRow {
  const row = fitById(db, id);
  if (!row) throw notFound(say('no-fit', { id }));
  return row;
}

/**
 * Starts a fit of everything kept for a palette in one form of reading. The fit's row names its readings before it
 * runs; constants and profile come later, by events.
 * @throws HttpProblem, SwatchSetProblem when there is nothing that can be fitted
 */
export function startFit(bench: Bench, paletteId: string, formId: string | undefined): Fit {
  const { db, events } = bench;
  const running = fitsOf(db, paletteId).find((f) => f.state === 'running' || f.state === 'pending');
  if (running) throw conflict(say('running'), '/problems/fit-running');
  const form = formId ?? usualForm(db, paletteId);
  const assembled = assembleSet(db, paletteId, form);
  if (assembled.set.swatches.length === 0) {
    throw conflict(assembled.leftOut[0] ?? say('nothing-to-fit'));
  }
  const id = newId('fit');
  const startedAt = bench.now();
  const title = paletteById(db, paletteId)!.title;
  const settings = { formId: form, program: VERSION };
  addFit(
    db,
    {
      id,
      palette_id: paletteId,
      form_id: form,
      settings: JSON.stringify(settings),
      left_out: JSON.stringify(assembled.leftOut),
      started_at: startedAt,
    },
    assembled.readingIds,
  );
  setFitState(db, id, { state: 'running' });
  const tell = (): void => events.send({ type: 'fit', fit: fitView(db, fitOr404(db, id)) });
  const rungs = Object.fromEntries(
    [...assembled.origins].map(([swatchId, row]) => [
      swatchId,
      { rungId: row.kind === 'rung' ? row.id : null, name: row.name },
    ]),
  );
  const { checks: _never, ...fitted } = assembled.set;
  const handle = bench.fits.start(
    id,
    {
      set: { ...fitted, checks: [] },
      created: startedAt,
      version: VERSION,
      title,
      provenance: { fit: id, readings: assembled.readingIds.length, program: `tintladder ${VERSION}` },
      rungs,
    },
    (done, sentence) => {
      progressOf.set(id, { done, sentence });
      tell();
    },
  );
  void handle.done.then((message) => {
    progressOf.delete(id);
    if (!db.open) return;
    finish(bench, id, message);
    tell();
  });
  return fitView(db, fitOr404(db, id));
}

function finish(
  bench: Bench,
  id: string,
  message: Exclude<FitMessage, { kind: 'progress' }> | undefined,
): void {
  const { db, events } = bench;
  const finishedAt = bench.now();
  if (!message) return setFitState(db, id, { state: 'cancelled', sentence: say('stopped'), finishedAt });
  if (message.kind === 'failed')
    return setFitState(db, id, { state: 'failed', sentence: message.sentence, finishedAt });
  const fit = fitOr404(db, id);
  db.transaction(() => {
    const profile = {
      id: newId('profile'),
      palette_id: fit.palette_id,
      fit_id: id,
      origin: 'fit' as const,
      title: paletteById(db, fit.palette_id)!.title,
      document: message.profile,
      created_at: finishedAt,
    };
    addProfile(db, profile);
    makeProfileCurrent(db, profileById(db, profile.id)!);
    const result = JSON.stringify(message.result);
    setFitState(db, id, { state: 'complete', sentence: '', finishedAt, result });
  })();
  events.send({ type: 'changed', what: 'profiles' });
  events.send({ type: 'changed', what: 'tubes' });
  events.send({ type: 'changed', what: 'checks' });
}

/** @throws HttpProblem while it is not complete */
export function fitResult(db: Db, id: string): FitResult {
  const row = fitOr404(db, id);
  if (row.state !== 'complete' || row.result === null) {
    throw conflict(row.state === 'failed' ? row.sentence : say('no-result'));
  }
  const result = JSON.parse(row.result) as Omit<FitResult, 'fit'>;
  const tubes = result.tubes.map((tube) => ({
    ...tube,
    suggestions: suggestionsOf(tube),
    // A fit of an earlier version of this program has none.
    notBelieved: tube.notBelieved ?? [],
  }));
  return { fit: fitView(db, row), ...result, tubes };
}
