import { type Command, Option } from 'commander';
import { GEOMETRIES } from '../../src/calibrate/swatch-set/terms.ts';
import type { Output } from '../output.ts';

export const FORMATS = ['json', 'csv', 'cgats', 'cxf'] as const;

export interface ConvertOptions {
  readonly output: string;
  readonly format?: (typeof FORMATS)[number];
  readonly scale?: 'fraction' | 'per cent';
  readonly decimalComma?: boolean;
  readonly geometry?: (typeof GEOMETRIES)[number];
}
export interface CompareOptions {
  readonly pair?: string[];
  readonly bridge?: string;
  readonly secondWhite?: string;
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
    .addOption(
      new Option('--scale <name>', 'how a file that does not say it scales reflectance').choices([
        'fraction',
        'per cent',
      ]),
    )
    .option('--decimal-comma', 'take commas between digits as decimal commas')
    .option('--no-decimal-comma', 'take no comma as a decimal comma')
    .addOption(
      new Option(
        '--geometry <name>',
        'how the instrument lights and looks, where the file does not say',
      ).choices(GEOMETRIES),
    )
    .addHelpText(
      'after',
      '\nWhat was assumed of a file, and what a format cannot hold, is said on standard error, a sentence each.\n' +
        'Example: tintladder convert readings.csv --scale "per cent" --geometry 45/0 -o readings.cxf',
    )
    .action(async (file: string, options: ConvertOptions) => {
      const { runConvert } = await import('../jobs/exchange.ts');
      runConvert(file, options, output);
    });

  program
    .command('compare')
    .description('what changed between two palette profiles, tube by tube')
    .argument('<first>', 'palette profile')
    .argument('<second>', 'palette profile')
    .option('--pair <ids...>', 'a tube of the first and its successor of the second: old=new')
    .option('--bridge <file>', 'swatch set with both whites, where the two profiles rest on different ones')
    .option(
      '--second-white <id>',
      "the second profile's white in the bridge (default: its id in the profile)",
    )
    .option('--json', 'print JSON')
    .action(async (first: string, second: string, options: CompareOptions) => {
      const { runCompare } = await import('../jobs/exchange.ts');
      runCompare(first, second, options, output);
    });
}
