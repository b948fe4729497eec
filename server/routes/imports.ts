import { importRoutes } from '../api/imports.ts';
import { ANSWERED, type Answering } from '../answer.ts';
import { writtenReadings } from '../exporting/written-readings.ts';
import { slug } from '../store/ids.ts';
import type { Bench } from '../bench.ts';
import { assembleSet } from '../fitting/assemble-set.ts';
import { usualForm } from '../fitting/usual-form.ts';
import { importProfile } from '../importing/import-profile.ts';
import { importSwatchSet } from '../importing/import-swatch-set.ts';
import { openFile } from '../importing/open-file.ts';
import { previewOf } from '../importing/preview.ts';
import { paletteOr404 } from './palettes.ts';

export function importAnswers(answer: Answering, bench: Bench): void {
  const { db, events } = bench;
  answer(importRoutes.previewImport, ({ body }) => previewOf(body, openFile(body, bench.now())));
  answer(importRoutes.importFile, ({ body }) => {
    const opened = openFile(body, bench.now());
    const preview = previewOf(body, opened);
    const title = preview.title.trim().slice(0, 200) || 'Imported palette';
    const kept =
      opened.kind === 'palette profile'
        ? { ...importProfile(db, opened.profile, title, bench.now()), readingCount: 0 }
        : { ...importSwatchSet(db, opened.set, title, bench.now()), profileId: null };
    for (const what of ['palettes', 'tubes', 'checks', 'profiles'] as const)
      events.send({ type: 'changed', what });
    return {
      paletteId: kept.paletteId,
      title,
      tubeIds: kept.tubeIds,
      swatchCount: preview.swatchCount,
      readingCount: kept.readingCount,
      checkCount: preview.checkCount,
      profileId: kept.profileId,
    };
  });
  answer(importRoutes.exportSwatchSet, ({ params, query }) => {
    const palette = paletteOr404(db, params.paletteId);
    return assembleSet(db, palette.id, query.form ?? usualForm(db, palette.id), { takesOpen: true }).set;
  });
  answer(importRoutes.downloadReadings, ({ params, query, res }) => {
    const palette = paletteOr404(db, params.paletteId);
    const { set } = assembleSet(db, palette.id, query.form ?? usualForm(db, palette.id), { takesOpen: true });
    const { text, type, ending } = writtenReadings(set, query.format, bench.now());
    res.setHeader('cache-control', 'no-store');
    res.attachment(`${slug(palette.title)}-readings.${ending}`);
    res.type(type).send(text);
    return ANSWERED;
  });
}
