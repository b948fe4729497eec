import type { z } from 'zod';
import { type Ladder, ladderRoutes, type Taken } from '../api/ladders.ts';
import type { takeReadingSchema } from '../api/readings.ts';
import type { Finding } from '../api/words.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { ladderAdvice } from '../fitting/ladder-advice.ts';
import { takeOnBench } from '../reading/take-on-bench.ts';
import {
  type IncomingReading,
  close,
  decide,
  holdOpen,
  keepReading,
  redo,
  rungOf,
  sayPulled,
  undo,
  weighRung,
} from '../ladder/deeds.ts';
import { openLadder, type OpenRung } from '../ladder/open-ladder.ts';
import { planFor, startLadder } from '../ladder/start-ladder.ts';
import { notFound } from '../problem.ts';
import { practiceRung } from '../instrument/practice-swatch.ts';
import { laddersOfPalette, laddersOfTube } from '../store/ladders.ts';
import { currentPaletteId } from '../store/palettes.ts';
import { ladderView, viewOf } from '../views/ladder-view.ts';
import { readingView } from '../views/reading-view.ts';
import { say } from '../api/sentences/ladders.ts';

type TakeBody = z.infer<typeof takeReadingSchema>;

export function ladderAnswers(answer: Answering, bench: Bench): void {
  const { db, events } = bench;
  const changed = (ladderId: string): Ladder => {
    events.send({ type: 'ladder', ladderId });
    events.send({ type: 'changed', what: 'tubes' });
    return ladderView(bench, ladderId);
  };

  answer(ladderRoutes.listLadders, ({ query }) => {
    const paletteId = currentPaletteId(db);
    const rows = query.tube
      ? laddersOfTube(db, query.tube)
      : paletteId
        ? laddersOfPalette(db, paletteId)
        : [];
    return rows.map((row) => ladderView(bench, row.id));
  });
  answer(ladderRoutes.planLadder, ({ body }) => {
    const { plan, rungIds, parts, tube, white } = planFor(db, body);
    const labels = new Map([
      [tube.id, tube.label],
      [white.id, white.label],
    ]);
    const { method, scaleResolution, smallestPour, tubeGrams, whiteGrams, worstRelativeSigma } = plan;
    return {
      plan: {
        method,
        scaleResolution,
        smallestPour,
        tubeGrams,
        whiteGrams,
        worstRelativeSigma,
        sentences: [...plan.sentences],
      },
      rungs: plan.rungs.map((rung, i) => ({
        name: rung.name,
        whiteParts: rung.whiteParts,
        parts: parts[i]!.map((part) => ({
          tubeId: part.tubeId,
          fromRungId: part.fromSwatchId,
          label:
            part.tubeId === null
              ? plan.rungs[rungIds.indexOf(part.fromSwatchId!)]!.name
              : labels.get(part.tubeId)!,
          plannedGrams: part.grams,
          weighedGrams: null,
        })),
        share: rung.share,
        shareRelativeSigma: rung.shareRelativeSigma,
      })),
    };
  });
  answer(ladderRoutes.startLadder, ({ body }) => changed(startLadder(db, body, bench.now())));
  answer(ladderRoutes.getLadder, ({ params }) => ladderView(bench, params.ladderId));
  answer(ladderRoutes.weighRung, ({ params, body }) => {
    weighRung(db, openLadder(db, params.ladderId), params.rungId, body.grams, bench.now());
    return changed(params.ladderId);
  });

  answer(ladderRoutes.sayPulled, ({ params, body }) => {
    sayPulled(db, openLadder(db, params.ladderId), body.pulledOn, body.rungId, bench.now());
    return changed(params.ladderId);
  });

  const take = async (
    ladderId: string,
    find: (rungs: readonly OpenRung[], cards: readonly OpenRung[]) => OpenRung,
    body: TakeBody,
  ): Promise<Taken> => {
    const ladder = openLadder(db, ladderId);
    holdOpen(ladder);
    const rung = find(ladder.rungs, ladder.cards);
    const taken = await takeOnBench(bench, body, () => practiceRung(db, ladder, rung, body.over));
    const readingId = keepReading(
      db,
      { ladderId },
      rung.row.id,
      body.over,
      aged(taken.reading, body),
      bench.now(),
    );
    const after = openLadder(db, ladderId);
    const reading = readingView(rungOf(after, rung.row.id).readings.find((r) => r.row.id === readingId)!);
    const findings: Finding[] = [...taken.findings];
    if (reading.state === 'sent back')
      findings.push({ level: 'warning', code: 'sent-back', sentence: reading.reason });
    events.send({ type: 'ladder', ladderId });
    return { reading, findings, ladder: viewOf(bench, after) };
  };
  answer(ladderRoutes.takeReading, ({ params, body }) =>
    take(params.ladderId, () => rungOf(openLadder(db, params.ladderId), params.rungId), body),
  );
  answer(ladderRoutes.takeCardReading, ({ params, body }) =>
    take(
      params.ladderId,
      (_, cards) => {
        const card = cards.find((c) => c.row.side === params.side);
        if (!card) throw notFound(say('no-card-films'));
        return card;
      },
      { ...body, over: 'opaque' },
    ),
  );
  answer(ladderRoutes.getLadderAdvice, ({ params }) => ladderAdvice(bench, params.ladderId));
  answer(ladderRoutes.decideReading, ({ params, body }) => {
    decide(db, openLadder(db, params.ladderId), params.readingId, body.keep, body.reason, bench.now());
    return changed(params.ladderId);
  });
  answer(ladderRoutes.undo, ({ params }) => {
    undo(db, openLadder(db, params.ladderId), bench.now());
    return changed(params.ladderId);
  });
  answer(ladderRoutes.redo, ({ params }) => {
    redo(db, openLadder(db, params.ladderId), bench.now());
    return changed(params.ladderId);
  });
  answer(ladderRoutes.closeLadder, ({ params }) => {
    close(db, openLadder(db, params.ladderId), bench.now());
    return changed(params.ladderId);
  });
}

/** A reading handed in with the age its film had goes into the store with it. */
function aged(reading: IncomingReading, body: TakeBody): IncomingReading {
  if (body.source === 'head' || body.ageDays === undefined) return reading;
  return { ...reading, raw: { ...(reading.raw as object), ageDays: body.ageDays } };
}
