import { type Command, Option } from 'commander';
import type { Output } from '../output.ts';

export const FORMATS = ['json', 'csv', 'cgats', 'cxf'] as const;

export interface ConvertOptions {
  readonly output: string;
  readonly format?: (typeof FORMATS)[number];
}
export interface CompareOptions {
  readonly pair?: string[];
  readonly json?: boolean;
}

/** The verbs that carry data between formats and between profiles: convert, compare. */
export function addExchangeVerbs(program: Command, output: Output): void {
  program
    .command('convert')
    .description('carry readings or constants into another open format')
    .argument('<file>', 'swatch set or palette profile, as JSON, CSV, CGATS.17 or CxF3')
    .requiredOption('-o, --output <file>', 'file to write; - writes to standard output')
    .addOption(
      new Option(
        '--format <name>',
        'format to write (default: by the ending .json, .csv, .txt, .cxf)',
      ).choices(FORMATS),
    )
    .addHelpText('after', '\nWhat a format cannot hold is said on standard error, a sentence each.')
    .action(async (file: string, options: ConvertOptions) => {
      const { runConvert } = await import('../work/exchange.ts');
      runConvert(file, options, output);
    });

  program
    .command('compare')
    .description('what changed between two palette profiles, tube by tube')
    .argument('<first>', 'palette profile')
    .argument('<second>', 'palette profile')
    .option('--pair <ids...>', 'a tube of the first and its successor of the second: old=new')
    .option('--json', 'print JSON')
    .action(async (first: string, second: string, options: CompareOptions) => {
      const { runCompare } = await import('../work/exchange.ts');
      runCompare(first, second, options, output);
    });
}
