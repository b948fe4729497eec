import type { Command } from 'commander';
import type { Output } from '../output.ts';
import { ONLY, PRIORITY, type TargetOptions, withTarget } from './mix.ts';
import { positive, whole } from './numbers.ts';
import { withWhite, type WhiteOptions } from './white-options.ts';

interface JsonOption {
  readonly json?: boolean;
}
export interface NudgeOptions extends WhiteOptions, JsonOption {
  readonly masses: string;
  readonly only?: string[];
}
export interface BetweenOptions extends WhiteOptions, JsonOption {
  readonly points: number;
}
export interface PartsOptions extends TargetOptions {
  readonly masses: string;
  readonly most: number;
  readonly volume?: boolean;
  readonly priority: 'evenly' | 'value' | 'hue';
}
export interface HighlightsOptions extends WhiteOptions, JsonOption {
  readonly only?: string[];
  readonly warmth: number;
  readonly grams: number;
  readonly scale?: number;
  readonly smallestPour?: number;
}
export interface MoreOptions extends WhiteOptions, JsonOption {
  readonly chosen: string[];
}
export interface ReachOptions extends TargetOptions {
  readonly only?: string[];
  readonly within: number;
}

/** The verbs that advise beside recipes: nudge, between, parts, highlights, more, reach. */
export function addAdviceVerbs(program: Command, output: Output): void {
  withWhite(program.command('nudge').description('the least paint that moves a mix one just-visible step'))
    .argument('<profile>', 'palette profile')
    .requiredOption('-m, --masses <list>', "the mix in grams: 'blue=1,white=3'")
    .option('--only <tubes...>', 'tubes that may be added')
    .option('--json', 'print JSON')
    .addHelpText(
      'after',
      '\nSteps: warmer, cooler, lighter, darker, greyer. Value is held while the colour moves.',
    )
    .action(async (file: string, options: NudgeOptions) => {
      const { runNudge } = await import('../jobs/advice.ts');
      runNudge(file, options, output);
    });

  withWhite(program.command('between').description('what becomes of chroma between two tubes'))
    .argument('<profile>', 'palette profile')
    .argument('<one>', 'tube')
    .argument('<two>', 'the other tube')
    .option('--points <number>', 'mixes on the way', whole(3, 201), 11)
    .option('--json', 'print JSON')
    .action(async (file: string, one: string, two: string, options: BetweenOptions) => {
      const { runBetween } = await import('../jobs/advice.ts');
      runBetween(file, one, two, options, output);
    });

  withWhite(withTarget(program.command('parts').description('a recipe in small whole parts')))
    .requiredOption('-m, --masses <list>', "the recipe: 'blue=0.4,white=9.6'")
    .option('--most <number>', 'most parts in all', whole(1, 60), 20)
    .option('--volume', 'parts by volume; every tube needs its density')
    .addOption(PRIORITY)
    .option('--json', 'print JSON')
    .action(async (file: string, options: PartsOptions) => {
      const { runParts } = await import('../jobs/advice.ts');
      runParts(file, options, output);
    });

  withWhite(program.command('highlights').description('the white touched with each warm tube'))
    .argument('<profile>', 'palette profile')
    .option(...ONLY)
    .option('--warmth <number>', 'how much warmer than the white, CIELAB units', positive, 3)
    .option('--grams <grams>', 'grams of each', positive, 10)
    .option('--scale <grams>', 'smallest step of the scale', positive)
    .option('--smallest-pour <grams>', 'least that is put on that scale (default: ten steps)', positive)
    .option('--json', 'print JSON')
    .action(async (file: string, options: HighlightsOptions) => {
      const { runHighlights } = await import('../jobs/advice.ts');
      runHighlights(file, options, output);
    });

  withWhite(program.command('more').description('which other tube of the profile adds most to those in use'))
    .argument('<profile>', 'palette profile')
    .requiredOption('--chosen <tubes...>', 'tubes in use')
    .option('--json', 'print JSON')
    .action(async (file: string, options: MoreOptions) => {
      const { runMore } = await import('../jobs/advice.ts');
      runMore(file, options, output);
    });

  withWhite(withTarget(program.command('reach').description('whether a colour can be mixed, by mixing it')))
    .option(...ONLY)
    .option('--within <number>', 'CIEDE2000 that counts as inside', positive, 0.1)
    .option('--json', 'print JSON')
    .action(async (file: string, options: ReachOptions) => {
      const { runReach } = await import('../jobs/advice.ts');
      runReach(file, options, output);
    });
}
