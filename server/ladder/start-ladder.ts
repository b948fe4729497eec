import { planLadder } from '../../src/calibrate/ladder/plan.ts';
import type { PlannedPour, WeighingPlan } from '../../src/calibrate/ladder/plan-shapes.ts';
import type { LadderRequest } from '../api/ladders.ts';
import { conflict, notFound } from '../problem.ts';
import { newId } from '../store/ids.ts';
import { addLadder, laddersOfTube } from '../store/ladders.ts';
import type { Db } from '../store/open-store.ts';
import { addSwatch } from '../store/swatches.ts';
import { tubeById, type TubeRow, whiteOf } from '../store/tubes.ts';
import { type KeptPlan, openLadder, type PlannedPart } from './open-ladder.ts';
import { say } from '../api/sentences/ladders.ts';

export interface LadderPlan {
  readonly tube: TubeRow;
  readonly white: TubeRow;
  readonly plan: WeighingPlan;
  readonly rungIds: readonly string[];
  /** Parts per rung, in the order of the rungs. */
  readonly parts: readonly (readonly PlannedPart[])[];
}

/**
 * The plan of a ladder for one tube against the white of its palette. The white's own ladder is its masstone alone.
 * @throws HttpProblem, ReadingRefused
 */
export function planFor(db: Db, request: LadderRequest): LadderPlan {
  const tube = tubeById(db, request.tubeId);
  if (!tube) throw notFound(say('no-tube', { id: request.tubeId }));
  const white = whiteOf(db, tube.palette_id);
  if (!white) {
    throw conflict(say('no-white'));
  }
  const isWhite = tube.id === white.id;
  const { scaleResolution, smallestPour, perRung, method } = request;
  const whiteParts = isWhite ? [0] : request.whiteParts;
  const plan = planLadder({ scaleResolution, smallestPour, perRung, method, whiteParts });
  const rungIds = plan.rungs.map(() => newId('rung'));
  const partOf = (pour: PlannedPour): PlannedPart => {
    const { grams } = pour;
    if (pour.kind === 'paint') return { tubeId: tube.id, fromSwatchId: null, grams };
    if (pour.kind === 'white') return { tubeId: white.id, fromSwatchId: null, grams };
    return { tubeId: null, fromSwatchId: rungIds[plan.rungs.findIndex((r) => r.name === pour.rung)]!, grams };
  };
  return { tube, white, plan, rungIds, parts: plan.rungs.map((rung) => rung.pours.map(partOf)) };
}

/** Begins a ladder. An unfinished one of the same tube is gone on with or put aside first. */
export function startLadder(db: Db, request: LadderRequest, at: string): string {
  const { tube, white, plan, rungIds, parts } = planFor(db, request);
  const unfinished = laddersOfTube(db, tube.id)
    .map((row) => openLadder(db, row.id))
    .find((ladder) => !ladder.folded.closed);
  if (unfinished) {
    throw conflict(say('has-ladder', { tube: tube.label }), '/problems/ladder-open');
  }
  const id = newId('ladder');
  const { method, sentences } = plan;
  const { tubeGrams, whiteGrams, worstRelativeSigma } = plan;
  const kept: KeptPlan = { request, method, sentences, tubeGrams, whiteGrams, worstRelativeSigma };
  const swatch = { palette_id: tube.palette_id, ladder_id: id, check_id: null, painted: '{}' };
  db.transaction(() => {
    addLadder(db, {
      id,
      palette_id: tube.palette_id,
      tube_id: tube.id,
      white_tube_id: white.id,
      plan: JSON.stringify(kept),
      started_at: at,
    });
    plan.rungs.forEach((rung, i) =>
      addSwatch(db, {
        ...swatch,
        id: rungIds[i]!,
        kind: 'rung',
        name: rung.name,
        white_parts: rung.whiteParts,
        parts: JSON.stringify(parts[i]),
        // Thin films tell hiding and undertone, which are the masstone's.
        film: request.cardFilms && rung.whiteParts === 0 ? 'card' : 'opaque',
        side: null,
      }),
    );
    if (!request.cardFilms) return;
    for (const side of ['black', 'white'] as const) {
      const card = { kind: 'card' as const, name: `card ${side}`, white_parts: null, parts: '[]' };
      addSwatch(db, { ...swatch, ...card, id: newId('card'), film: 'opaque', side });
    }
  })();
  return id;
}
