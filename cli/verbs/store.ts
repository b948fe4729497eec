import { existsSync } from 'node:fs';
import type { Command } from 'commander';
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

interface DataOption {
  readonly data?: string;
}

interface ExportOptions extends DataOption {
  readonly output: string;
  readonly readings?: boolean;
  readonly makers?: boolean;
  readonly palette?: string;
}

const DATA = ['-d, --data <folder>', 'folder of the store (default: the data folder of this user)'] as const;

/** The verbs that work on the bench's own store: backup, import, export. */
export function addStoreVerbs(program: Command, output: Output): void {
  program
    .command('backup')
    .description("copy the whole store to one file by SQLite's own backup, also while the bench runs")
    .argument('<file>', 'the copy to write; it must not be there yet')
    .option(...DATA)
    .action(async (file: string, options: DataOption) => {
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
    });

  program
    .command('import')
    .description('keep a swatch set or a palette profile as a palette of its own')
    .argument('<file>', 'swatch set, palette profile, or readings as CGATS.17, CSV or CxF3')
    .option(...DATA)
    .action(async (file: string, options: DataOption) => {
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
    });

  program
    .command('export')
    .description("write a palette's profile, or its readings as a swatch set")
    .requiredOption('-o, --output <file>', 'file to write; - writes to standard output')
    .option('--readings', 'write the readings as a swatch set in place of the profile')
    .option('--makers', 'keep what was noted of makers and batches')
    .option('--palette <id>', 'palette (default: the current one)')
    .option(...DATA)
    .action(async (options: ExportOptions) => {
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
