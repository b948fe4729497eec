import { fitRoutes } from '../api/fits.ts';
import { tubeFactsRoutes } from '../api/tube-facts.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { tubeChecks } from '../checking/tube-checks.ts';
import { fitOr404, fitResult, fitView, startFit } from '../fitting/fit-service.ts';
import { tubeFacts } from '../fitting/tube-facts.ts';
import { conflict } from '../problem.ts';
import { fitsOf } from '../store/fits.ts';
import { currentPaletteId } from '../store/palettes.ts';
import { paletteOr404 } from './palettes.ts';
import { say } from '../api/sentences/bench.ts';

export function fitAnswers(answer: Answering, bench: Bench): void {
  const { db } = bench;
  answer(fitRoutes.listFits, ({ query }) => {
    const paletteId = query.palette ?? currentPaletteId(db);
    return paletteId ? fitsOf(db, paletteId).map((row) => fitView(db, row)) : [];
  });
  answer(fitRoutes.startFit, ({ body }) => startFit(bench, paletteOr404(db, body.paletteId).id, body.formId));
  answer(fitRoutes.getFit, ({ params }) => fitView(db, fitOr404(db, params.fitId)));
  answer(fitRoutes.getFitResult, ({ params }) => fitResult(db, params.fitId));
  answer(tubeFactsRoutes.getTubeChecks, ({ params }) => tubeChecks(bench, params.tubeId));
  answer(tubeFactsRoutes.getTubeFacts, ({ params, query }) => tubeFacts(bench, params.tubeId, query));
  answer(fitRoutes.cancelFit, ({ params }) => {
    const row = fitOr404(db, params.fitId);
    if (!bench.fits.stop(row.id)) throw conflict(say('fit-not-running'));
    return fitView(db, row);
  });
}
