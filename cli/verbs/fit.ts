import type { Command } from 'commander';
import type { Output } from '../output.ts';

export interface FitOptions {
  readonly output?: string;
  readonly json?: boolean;
  readonly advice?: boolean;
  readonly film?: string;
  readonly against?: string;
  readonly again?: string;
}

export function addFit(program: Command, output: Output): void {
  program
    .command('fit')
    .description('fit the constants of a palette from a swatch set')
    .argument('<file>', 'swatch set (JSON), or CGATS.17, CSV or CxF3 that holds one; - reads standard input')
    .option('-o, --output <file>', 'write the palette profile here; - writes it to standard output')
    .option('--json', 'print the table as JSON')
    .option('--advice', 'also say what to measure next, and how much it would help')
    .option(
      '--film <thickness>',
      "film of the contrast ratios: 50um, or 2 for units of the white's scattering",
    )
    .option('--against <tube>', 'tinting strength of every tube in per cent of this one')
    .option('--again <file>', 'the same swatches read again when dry: says how each has shifted')
    .addHelpText('after', FIT_HELP)
    .action(async (file: string, options: FitOptions) => {
      // The fit is read only when it is asked for, so that every other verb starts at once.
      const { runFit } = await import('../jobs/fit.ts');
      runFit(file, options, output);
    });
}

const FIT_HELP = `
How far a tube can be trusted, a tube a line:
  rungs        painted patches that tell of this tube
  residual     mean CIEDE2000 (D65/10deg) between fitted rungs and their readings
  left out     the same for each rung, fitted without it
  checks       the same for the document's checks that hold this tube, which no fit has seen
  MCDM         mean colour difference of repeats from their mean (ASTM E2214); - without repeats
  weighing     largest weighing error the readings call for, in per cent of the ratio
  doubt        mean CIEDE2000 that mixtures with this tube stay within 95 times in 100
  mostly from  the greatest part of that doubt: its own curves, the white and surface all tubes share, the other
               tubes of the mixtures, or what the equations miss

What it does as a film; brackets hold the truth 95 times in 100:
  contrast       Y over black divided by Y over white; by default at 50 um of wet film (20 m2/l) where one drawdown's
                 thickness is known, else at 2 x, the film in which the white scatters twice
  Y, standards   luminance of the film that hides, and which standards cover it: ISO 6504-3 over 25, ASTM D2805 over 15
  hides 0.98 at  thickness for full hiding
  S 550 nm       scattering per micrometre of wet film, where a thickness is known
  undertone      0.5 x over a white card, with the CIEDE2000 it is sure to
  half strength  parts of white that take it half way from its own lightness to the white's
  strength       with --against: tinting strength after ASTM D4838 at 1:4

Examples: tintladder fit ladders.json -o palette.json
          tintladder fit wet.json --again after-four-weeks.json --film 50um`;
