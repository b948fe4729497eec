import { DEMO_NOTE, DEMO_RACK } from '../../src/device/practice/paints/demo-rack.ts';
import { type Palette, paletteRoutes } from '../api/palettes.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { notFound } from '../problem.ts';
import type { Db } from '../store/open-store.ts';
import {
  addPalette,
  allPalettes,
  changePalette,
  currentPaletteId,
  makePaletteCurrent,
  paletteById,
  type PaletteRow,
} from '../store/palettes.ts';
import { geometryOf } from '../store/readings.ts';
import { addTube, tubesOf } from '../store/tubes.ts';
import { say } from '../api/sentences/bench.ts';

export function paletteView(db: Db, row: PaletteRow): Palette {
  const tubes = tubesOf(db, row.id);
  return {
    id: row.id,
    title: row.title,
    demo: row.demo === 1,
    note: row.note,
    whiteTubeId: tubes.find((tube) => tube.role === 'white')?.id ?? null,
    tubeCount: tubes.length,
    geometry: geometryOf(db, row.id) ?? null,
    current: currentPaletteId(db) === row.id,
    createdAt: row.created_at,
  };
}

/** @throws HttpProblem 404 */
export function paletteOr404(db: Db, id: string | undefined): PaletteRow {
  const wanted = id ?? currentPaletteId(db);
  if (wanted === undefined) throw notFound(say('no-palette-yet'));
  const row = paletteById(db, wanted);
  if (!row) throw notFound(say('no-palette', { id: wanted }));
  return row;
}

export function paletteAnswers(answer: Answering, bench: Bench): void {
  const { db, events } = bench;
  const changed = (): void => {
    events.send({ type: 'changed', what: 'palettes' });
    events.send({ type: 'changed', what: 'tubes' });
  };
  answer(paletteRoutes.listPalettes, () => allPalettes(db).map((row) => paletteView(db, row)));
  answer(paletteRoutes.createPalette, ({ body }) => {
    const row = addPalette(db, { ...body, demo: false, at: bench.now() });
    makePaletteCurrent(db, row.id);
    changed();
    return paletteView(db, row);
  });
  answer(paletteRoutes.changePalette, ({ params, body }) => {
    paletteOr404(db, params.paletteId);
    changePalette(db, params.paletteId, body);
    changed();
    return paletteView(db, paletteOr404(db, params.paletteId));
  });
  answer(paletteRoutes.makePaletteCurrent, ({ params }) => {
    const row = paletteOr404(db, params.paletteId);
    makePaletteCurrent(db, row.id);
    changed();
    return paletteView(db, row);
  });
  answer(paletteRoutes.createDemoRack, () => {
    const at = bench.now();
    const row = db.transaction(() => {
      const palette = addPalette(db, { title: 'Demo rack', note: DEMO_NOTE, demo: true, at });
      for (const paint of DEMO_RACK) {
        const words = {
          label: paint.label,
          pigments: paint.pigments,
          batch: '',
          bought: null,
          drying: 'fresh' as const,
          role: paint.role ?? null,
          density: paint.density ?? null,
          note: DEMO_NOTE,
          practicePaintId: paint.id,
          replaces: null,
        };
        addTube(db, palette.id, words, at, paint.id);
      }
      makePaletteCurrent(db, palette.id);
      return palette;
    })();
    changed();
    return paletteView(db, row);
  });
}
