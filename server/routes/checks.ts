import { checkRoutes } from '../api/checks.ts';
import type { Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { checkViews } from '../checking/check-view.ts';
import { practiceMixture } from '../instrument/practice-swatch.ts';
import { keepReading } from '../ladder/deeds.ts';
import { notFound, unusable } from '../problem.ts';
import { takeOnBench } from '../reading/take-on-bench.ts';
import { addCheck, checkById, type CheckRow, checksOf, putCheckAway } from '../store/checks.ts';
import { newId } from '../store/ids.ts';
import { currentPaletteId } from '../store/palettes.ts';
import { addSwatch, swatchOfCheck } from '../store/swatches.ts';
import { tubeById } from '../store/tubes.ts';
import { paletteOr404 } from './palettes.ts';
import { say } from '../api/sentences/checks.ts';

export function checkAnswers(answer: Answering, bench: Bench): void {
  const { db, events } = bench;
  const changed = (): void => events.send({ type: 'changed', what: 'checks' });
  const checkOr404 = (id: string): CheckRow => {
    const row = checkById(db, id);
    if (!row) throw notFound(say('no-check', { id }));
    return row;
  };

  const oneView = async (row: CheckRow) => (await checkViews(bench, row.palette_id, [row]))[0]!;

  answer(checkRoutes.listChecks, async ({ query }) => {
    const paletteId = query.palette ?? currentPaletteId(db);
    const checks = paletteId ? await checkViews(bench, paletteId, checksOf(db, paletteId)) : [];
    const results = checks.flatMap((check) => check.result ?? []);
    const count = results.length;
    if (count === 0) return { checks, summary: null };
    const meanDeltaE00 = results.reduce((sum, r) => sum + r.deltaE00, 0) / count;
    const maxDeltaE00 = Math.max(...results.map((r) => r.deltaE00));
    const inside = results.filter((r) => r.inside95).length;
    return {
      checks,
      summary: {
        count,
        meanDeltaE00,
        maxDeltaE00,
        inside95: inside / count,
        sentence: say('summary', {
          count,
          mean: meanDeltaE00.toFixed(2),
          worst: maxDeltaE00.toFixed(2),
          inside,
          of: count,
        }),
      },
    };
  });
  answer(checkRoutes.createCheck, ({ body }) => {
    const palette = paletteOr404(db, undefined);
    const used = Object.entries(body.masses).filter(([, mass]) => mass > 0);
    if (used.length === 0) throw unusable(say('no-paint'), 'masses');
    const tubes = used.map(([id]) => {
      const tube = tubeById(db, id);
      if (!tube || tube.palette_id !== palette.id) {
        throw unusable(say('no-tube-in-palette', { id }), `masses.${id}`);
      }
      return tube;
    });
    const id = newId('check');
    const title =
      body.title ??
      tubes
        .map((tube, i) => `${used[i]![1]} ${tube.label}`)
        .join(' + ')
        .slice(0, 200);
    const masses = Object.fromEntries(used);
    db.transaction(() => {
      addCheck(db, {
        id,
        palette_id: palette.id,
        title,
        masses: JSON.stringify(masses),
        film: '{}',
        truth: null,
        note: body.note,
        created_at: bench.now(),
      });
      addSwatch(db, {
        id: newId('swatch'),
        palette_id: palette.id,
        ladder_id: null,
        check_id: id,
        kind: 'check',
        name: title,
        white_parts: null,
        parts: '[]',
        painted: JSON.stringify({ masses, film: 'opaque' }),
        film: 'opaque',
        side: null,
      });
    })();
    changed();
    return oneView(checkOr404(id));
  });
  answer(checkRoutes.readCheck, async ({ params, body }) => {
    const row = checkOr404(params.checkId);
    const masses = JSON.parse(row.masses) as Record<string, number>;
    const taken = await takeOnBench(bench, body, () => practiceMixture(db, masses));
    const swatch = swatchOfCheck(db, row.id)!;
    const readingId = keepReading(db, { checkId: row.id }, swatch.id, 'opaque', taken.reading, bench.now());
    changed();
    const check = await oneView(row);
    return {
      reading: check.readings.find((r) => r.id === readingId) ?? null,
      findings: [...taken.findings],
      check,
    };
  });
  answer(checkRoutes.deleteCheck, ({ params }) => {
    putCheckAway(db, checkOr404(params.checkId).id);
    changed();
    return undefined;
  });
}
