import type { Command } from 'commander';
import type { Output } from '../output.ts';
import { withWhite, type WhiteOptions } from './white-options.ts';

export interface PredictOptions extends WhiteOptions {
  readonly masses: string;
  readonly json?: boolean;
}

export function addPredict(program: Command, output: Output): void {
  withWhite(
    program
      .command('predict')
      .description('predict the colour of a mixture')
      .argument('<profile>', 'palette profile')
      .requiredOption('-m, --masses <list>', "grams, or parts by mass: 'blue=1,white=3'")
      .option('--json', 'print JSON: reflectance on the grid, XYZ, Lab, value, lean, interval'),
  ).action(async (file: string, options: PredictOptions) => {
    const { runPredict } = await import('../jobs/predict.ts');
    runPredict(file, options, output);
  });
}
