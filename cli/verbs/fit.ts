import type { Command } from 'commander';
import type { Output } from '../output.ts';

export interface FitOptions {
  readonly output?: string;
  readonly json?: boolean;
  readonly advice?: boolean;
}

export function addFit(program: Command, output: Output): void {
  program
    .command('fit')
    .description('fit the constants of a palette from a swatch set')
    .argument('<file>', 'swatch set (JSON), or CGATS.17, CSV or CxF3 that holds one; - reads standard input')
    .option('-o, --output <file>', 'write the palette profile here; - writes it to standard output')
    .option('--json', 'print the table as JSON')
    .option('--advice', 'also say what to measure next, and how much it would help')
    .addHelpText('after', FIT_HELP)
    .action(async (file: string, options: FitOptions) => {
      // The fit is read only when it is asked for, so that every other verb starts at once.
      const { runFit } = await import('../jobs/fit.ts');
      runFit(file, options, output);
    });
}

const FIT_HELP = `
The table, a tube a line:
  rungs      painted patches that tell of this tube
  residual   mean CIEDE2000 (D65/10deg) between fitted rungs and their readings
  left out   the same for each rung, fitted without it
  MCDM       mean colour difference of repeats from their mean (ASTM E2214); - without repeats
  weighing   largest weighing error the readings call for, in per cent of the ratio

Example: tintladder fit ladders.json -o palette.json`;
