import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DEFAULT_SETTINGS, type Settings, settingsSchema, stateRoutes } from '../api/state.ts';
import { ANSWERED, type Answering } from '../answer.ts';
import type { Bench } from '../bench.ts';
import { defined } from '../defined.ts';
import { foldHistory } from '../ladder/fold-history.ts';
import { openApiDocument } from '../openapi.ts';
import { historyOf } from '../store/history.ts';
import { laddersOfPalette } from '../store/ladders.ts';
import { backUp } from '../store/open-store.ts';
import { allPalettes, currentPaletteId } from '../store/palettes.ts';
import { currentProfile } from '../store/profiles.ts';
import { readSetting, writeSetting } from '../store/settings.ts';
import { VERSION } from '../version.ts';
import { paletteView } from './palettes.ts';

export function currentSettings(bench: Bench): Settings {
  const kept = settingsSchema.partial().safeParse(readSetting(bench.db, 'settings') ?? {});
  return { ...DEFAULT_SETTINGS, ...(kept.success ? defined(kept.data) : {}) };
}

export function stateAnswers(answer: Answering, bench: Bench): void {
  const { db } = bench;
  answer(stateRoutes.health, () => ({
    ok: true as const,
    name: 'tintladder' as const,
    version: VERSION,
    startedAt: bench.startedAt,
  }));
  answer(stateRoutes.state, () => {
    const palettes = allPalettes(db);
    const current = currentPaletteId(db) ?? null;
    const open = current
      ? laddersOfPalette(db, current).filter((l) => !foldHistory(historyOf(db, { ladderId: l.id })).closed)
      : [];
    return {
      version: VERSION,
      firstStart: palettes.length === 0,
      palettes: palettes.map((row) => paletteView(db, row)),
      currentPaletteId: current,
      currentProfileId: current ? (currentProfile(db, current)?.id ?? null) : null,
      openLadderIds: open.map((l) => l.id),
      instrument: bench.instrument.view(),
      settings: currentSettings(bench),
      storeFile: db.name,
    };
  });
  answer(stateRoutes.getSettings, () => currentSettings(bench));
  answer(stateRoutes.changeSettings, ({ body }) => {
    const next: Settings = { ...currentSettings(bench), ...defined(body) };
    writeSetting(db, 'settings', next);
    bench.events.send({ type: 'changed', what: 'settings' });
    return next;
  });
  answer(stateRoutes.openapi, () => openApiDocument());
  answer(stateRoutes.backup, async ({ res }) => {
    const folder = mkdtempSync(join(tmpdir(), 'tintladder-backup-'));
    const file = join(folder, 'tintladder.sqlite');
    await backUp(db, file);
    const day = bench.now().slice(0, 10);
    await new Promise<void>((resolve, reject) => {
      res.setHeader('cache-control', 'no-store');
      res.type('application/octet-stream');
      res.download(file, `tintladder-${day}.sqlite`, (error) => {
        rmSync(folder, { recursive: true, force: true });
        if (error && !res.headersSent) reject(error);
        else resolve();
      });
    });
    return ANSWERED;
  });
}
