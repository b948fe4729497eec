import type { Command } from 'commander';
import type { Output } from '../output.ts';
import { withWhite, type WhiteOptions } from './white-options.ts';

export interface CheckOptions extends WhiteOptions {
  readonly json?: boolean;
}

export function addCheck(program: Command, output: Output): void {
  withWhite(
    program
      .command('check')
      .description('predict the checks of a swatch set and compare them with what was read')
      .argument('<profile>', 'palette profile')
      .argument('<swatch-set>', 'document whose "checks" are mixtures never fitted, with readings or truth')
      .option('--json', 'print {wavelengths, checks: [{id, reflectance, deltaE00, inside95}], summary}'),
  )
    .addHelpText('after', CHECK_HELP)
    .action(async (profileFile: string, setFile: string, options: CheckOptions) => {
      const { runCheck } = await import('../jobs/check.ts');
      runCheck(profileFile, setFile, options, output);
    });
}

const CHECK_HELP = `
deltaE00 is CIEDE2000 under the given illuminant and observer; inside95 says whether the truth lies in the region that
was said to hold it 95 times in 100. A thin film of unknown thickness gets one thickness, fitted to its own drawdown.

Example: tintladder check palette.json mixtures.json --json`;
