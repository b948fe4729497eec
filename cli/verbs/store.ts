import type { Command } from 'commander';
import type { Output } from '../output.ts';

export interface DataOption {
  readonly data?: string;
}

export interface ExportOptions extends DataOption {
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
      const { runBackup } = await import('../jobs/store.ts');
      await runBackup(file, options, output);
    });

  program
    .command('import')
    .description('keep a swatch set or a palette profile as a palette of its own')
    .argument('<file>', 'swatch set, palette profile, or readings as CGATS.17, CSV or CxF3')
    .option(...DATA)
    .action(async (file: string, options: DataOption) => {
      const { runImport } = await import('../jobs/store.ts');
      await runImport(file, options, output);
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
      const { runExport } = await import('../jobs/store.ts');
      await runExport(options, output);
    });
}
