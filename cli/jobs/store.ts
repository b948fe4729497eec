import { existsSync } from 'node:fs';
import { storeFile } from '../../server/data-folder.ts';
import { assembleSet } from '../../server/fitting/assemble-set.ts';
import { usualForm } from '../../server/fitting/usual-form.ts';
import { importProfile } from '../../server/importing/import-profile.ts';
import { importSwatchSet } from '../../server/importing/import-swatch-set.ts';
import { previewOf } from '../../server/importing/preview.ts';
import { profileIn } from '../../server/routes/profiles.ts';
import { backUp, type Db, openStore } from '../../server/store/open-store.ts';
import { currentPaletteId, paletteById } from '../../server/store/palettes.ts';
import { currentProfile } from '../../server/store/profiles.ts';
import { withoutMakers } from '../../src/profile/without-makers.ts';
import { writeProfile } from '../../src/profile/write.ts';
import { openAny } from '../input.ts';
import { type Output, writeOut } from '../output.ts';
import { CommandProblem } from '../problem.ts';

import type { DataOption, ExportOptions } from '../verbs/store.ts';

export async function runBackup(file: string, options: DataOption, output: Output): Promise<void> {
  if (existsSync(file)) throw new CommandProblem(`${file} is there already; name a new file.`);
  await withStore(options, async (db) => {
    await backUp(db, file).catch((error: unknown) => {
      throw new CommandProblem(
        `${file} cannot be written (${(error as Error).message}); choose another place.`,
      );
    });
    output.out(
      `The store was copied to ${file}. To restore it, stop the bench and put it in place of ${db.name}.`,
    );
  });
}

export async function runImport(file: string, options: DataOption, output: Output): Promise<void> {
  const opened = openAny(file);
  const preview = previewOf({ fileName: file }, opened);
  await withStore(options, (db) => {
    const at = new Date().toISOString();
    if (opened.kind === 'swatch set') importSwatchSet(db, opened.set, preview.title, at);
    else importProfile(db, opened.profile, preview.title, at);
    output.out(
      `Imported "${preview.title}": ${preview.tubes.length} tubes, ${preview.readingCount} readings, ${preview.checkCount} checks.`,
    );
    for (const { sentence } of preview.assumptions) output.out(`Assumed: ${sentence}`);
    for (const warning of preview.warnings) output.out(`Warning: ${warning}`);
  });
}

export async function runExport(options: ExportOptions, output: Output): Promise<void> {
  await withStore(options, (db) => {
    const id = options.palette ?? currentPaletteId(db);
    const palette = id === undefined ? undefined : paletteById(db, id);
    if (!palette) {
      throw new CommandProblem(
        options.palette
          ? `There is no palette "${options.palette}"; leave --palette out for the current one.`
          : 'The store holds no palette yet; import one, or begin one with "tintladder serve".',
      );
    }
    if (options.readings) {
      const { set } = assembleSet(db, palette.id, usualForm(db, palette.id));
      writeOut(options.output, `${JSON.stringify(set, null, 2)}\n`, output);
    } else {
      const row = currentProfile(db, palette.id);
      if (!row)
        throw new CommandProblem(
          `"${palette.title}" has no constants yet; fit it first, or export --readings.`,
        );
      const profile = profileIn(row);
      writeOut(options.output, writeProfile(options.makers ? profile : withoutMakers(profile)), output);
    }
  });
}

async function withStore(options: DataOption, work: (db: Db) => void | Promise<void>): Promise<void> {
  const db = openStore(storeFile(options.data));
  try {
    await work(db);
  } finally {
    db.close();
  }
}
