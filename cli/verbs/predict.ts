import type { Command } from 'commander';
import type { Output } from '../output.ts';
import { withWhite, type WhiteOptions } from './white-options.ts';

export interface PredictOptions extends WhiteOptions {
  readonly masses: string;
  readonly film?: string;
  readonly micrometres?: boolean;
  readonly ground: string;
  readonly glaze?: string[];
  readonly json?: boolean;
}

export function addPredict(program: Command, output: Output): void {
  withWhite(
    program
      .command('predict')
      .description('predict the colour of a mixture')
      .argument('<profile>', 'palette profile')
      .requiredOption('-m, --masses <list>', "grams, or parts by mass: 'blue=1,white=3'")
      .option(
        '--film <list>',
        "as films this thick, thin to thick: '0.5,1,2,4' (1 scatters as a white with SX = 1)",
      )
      .option('--micrometres', 'film and glazes are in micrometres; the profile must know one thickness')
      .option(
        '--ground <what>',
        "under the films: white, black, a paint ('bone-black=1') or a file with 36 reflectance factors",
        'white',
      )
      .option('--glaze <masses@thickness...>', "films over the film, bottom first: 'blue=1@0.3'")
      .option('--json', 'print JSON: reflectance on the grid, XYZ, Lab, value, lean, interval, other lights'),
  ).action(async (file: string, options: PredictOptions) => {
    const { runPredict } = await import('../jobs/predict.ts');
    runPredict(file, options, output);
  });
}
