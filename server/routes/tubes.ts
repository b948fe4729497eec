import { DEMO_RACK } from '../../src/device/practice/paints/demo-rack.ts';
import { tubeRoutes } from '../api/tubes.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { conflict, notFound, unusable } from '../problem.ts';
import { laddersOfPalette } from '../store/ladders.ts';
import { addPalette, currentPaletteId, makePaletteCurrent } from '../store/palettes.ts';
import {
  addTube,
  changeTube,
  deleteTube,
  tubeById,
  tubeIsUsed,
  type TubeRow,
  tubesOf,
  whiteOf,
} from '../store/tubes.ts';
import { rackFacts, tubeView } from '../views/tube-view.ts';
import { paletteOr404 } from './palettes.ts';
import { say } from '../api/sentences/bench.ts';

export function tubeAnswers(answer: Answering, bench: Bench): void {
  const { db, events } = bench;
  const changed = (): void => events.send({ type: 'changed', what: 'tubes' });
  const tubeOr404 = (id: string): TubeRow => {
    const row = tubeById(db, id);
    if (!row) throw notFound(say('no-tube', { id }));
    return row;
  };
  const view = (row: TubeRow) => tubeView(bench, row, rackFacts(bench, row.palette_id));

  /** The white may move to another tube only while no tint was planned with it. */
  const freeTheWhite = (paletteId: string, forTube: string | undefined): void => {
    const white = whiteOf(db, paletteId);
    if (!white || white.id === forTube) return;
    if (laddersOfPalette(db, paletteId).length > 0) {
      throw conflict(say('is-the-white-other', { tube: white.label }));
    }
    changeTube(db, white.id, { role: null });
  };

  answer(tubeRoutes.listTubes, ({ query }) => {
    if (query.palette === undefined && currentPaletteId(db) === undefined) return [];
    const palette = paletteOr404(db, query.palette);
    const facts = rackFacts(bench, palette.id);
    return tubesOf(db, palette.id)
      .filter((row) => query.putAway === 'true' || row.put_away === 0)
      .map((row) => tubeView(bench, row, facts));
  });
  answer(tubeRoutes.getTube, ({ params }) => view(tubeOr404(params.tubeId)));
  answer(tubeRoutes.createTube, ({ body }) => {
    if (body.practicePaintId !== null && !DEMO_RACK.some((paint) => paint.id === body.practicePaintId)) {
      throw unusable(
        say('no-practice-paint', { id: body.practicePaintId, known: DEMO_RACK.map((p) => p.id).join(', ') }),
        'practicePaintId',
      );
    }
    if (body.replaces !== null) tubeOr404(body.replaces);
    const row = db.transaction(() => {
      let paletteId = currentPaletteId(db);
      if (paletteId === undefined) {
        paletteId = addPalette(db, { title: 'My palette', note: '', demo: false, at: bench.now() }).id;
        makePaletteCurrent(db, paletteId);
        events.send({ type: 'changed', what: 'palettes' });
      }
      if (body.role === 'white') freeTheWhite(paletteId, undefined);
      return addTube(db, paletteId, body, bench.now());
    })();
    changed();
    return view(row);
  });
  answer(tubeRoutes.changeTube, ({ params, body }) => {
    const row = tubeOr404(params.tubeId);
    db.transaction(() => {
      if (body.role === 'white') freeTheWhite(row.palette_id, row.id);
      if (body.role === null && row.role === 'white' && laddersOfPalette(db, row.palette_id).length > 0) {
        throw conflict(say('is-the-white', { tube: row.label }));
      }
      changeTube(db, row.id, body);
    })();
    changed();
    return view(tubeOr404(params.tubeId));
  });
  answer(tubeRoutes.deleteTube, ({ params }) => {
    const row = tubeOr404(params.tubeId);
    if (tubeIsUsed(db, row.id)) {
      throw conflict(say('was-measured', { tube: row.label }));
    }
    deleteTube(db, row.id);
    changed();
    return undefined;
  });
  answer(tubeRoutes.listPracticePaints, () =>
    DEMO_RACK.map((paint) => ({
      id: paint.id,
      label: paint.label,
      pigments: [...paint.pigments],
      white: paint.role === 'white',
    })),
  );
}
