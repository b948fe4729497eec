import { type Command, Option } from 'commander';
import type { Output } from '../output.ts';
import { positive, real, whole } from './numbers.ts';
import { withWhite, type WhiteOptions } from './white-options.ts';

export interface TargetOptions extends WhiteOptions {
  readonly lab?: string;
  readonly reflectance?: string;
  readonly json?: boolean;
}
export interface MatchOptions extends TargetOptions {
  readonly maxTubes: number;
  readonly count: number;
  readonly priority: 'evenly' | 'value' | 'hue';
  readonly grams: number;
  readonly scale?: number;
  readonly smallestPour?: number;
  readonly closeEnough?: number;
  readonly prices?: string;
  readonly only?: string[];
  readonly without?: string[];
}
export interface AddOptions extends TargetOptions {
  readonly only?: string[];
  readonly pile?: string;
  readonly pileGrams?: number;
  readonly pileTubes?: string[];
  readonly reading?: string;
  readonly maxTubes: number;
  readonly maxGrams?: number;
  readonly need?: number;
  readonly priority: 'evenly' | 'value' | 'hue';
  readonly scale?: number;
  readonly smallestPour?: number;
}
export interface LimitsOptions extends WhiteOptions {
  readonly only?: string[];
  readonly hues: number;
  readonly json?: boolean;
}
export interface StringOptions extends WhiteOptions {
  readonly only?: string[];
  readonly steps: number;
  readonly grams: number;
  readonly lean?: number;
  readonly tube?: string;
  readonly from?: number;
  readonly to?: number;
  readonly scale?: number;
  readonly smallestPour?: number;
  readonly json?: boolean;
}

/** A palette of a few tubes out of a profile of many. */
export const ONLY = ['--only <tubes...>', 'tubes to mix with (default: all)'] as const;
export const PRIORITY = new Option('--priority <what>', 'what to hold on to where not everything can be had')
  .choices(['evenly', 'value', 'hue'])
  .default('evenly');

/** The verbs that mix: match, add, limits, string. */
export function addMixVerbs(program: Command, output: Output): void {
  withWhite(withTarget(program.command('match').description('recipes for a wanted colour')))
    .option('--max-tubes <number>', 'most tubes in one recipe', whole(1, 8), 4)
    .option('-n, --count <number>', 'how many recipes', whole(1, 20), 5)
    .addOption(PRIORITY)
    .option('--grams <grams>', 'grams of mix', positive, 10)
    .option('--scale <grams>', 'smallest step of the scale: recipes come in whole steps of it', positive)
    .option('--smallest-pour <grams>', 'least that is put on that scale (default: ten steps)', positive)
    .option(
      '--close-enough <number>',
      'CIEDE2000 under which fewer tubes come first (default: 0.02)',
      positive,
    )
    .option('--prices <list>', "price of a gram, any currency: 'blue=0.9,white=0.2'")
    .option(...ONLY)
    .option('--without <tubes...>', 'tubes to leave in their place')
    .option('--json', 'print JSON')
    .addHelpText('after', "\nExample: tintladder match palette.json --lab '48,12,-20' --scale 0.01")
    .action(async (file: string, options: MatchOptions) => {
      const { runMatch } = await import('../jobs/mix.ts');
      runMatch(file, options, output);
    });

  withWhite(withTarget(program.command('add').description('what to add to a pile already mixed')))
    .option('--pile <list>', "grams in the pile: 'blue=1,white=3'")
    .option('--reading <L,a,b>', 'the pile as it was read')
    .option('--pile-grams <grams>', 'with a reading alone: what the pile weighs', positive)
    .option('--pile-tubes <tubes...>', 'with a reading alone: tubes that may be in it (default: any)')
    .option('--only <tubes...>', 'tubes that may be added (default: any)')
    .option('--max-tubes <number>', 'most tubes to add', whole(1, 3), 3)
    .option('--max-grams <grams>', 'most to add', positive)
    .option('--need <grams>', 'grams of the right colour needed in the end (default: the pile)', positive)
    .option('--scale <grams>', 'smallest step of the scale: additions come in whole steps of it', positive)
    .option('--smallest-pour <grams>', 'least that is put on that scale (default: ten steps)', positive)
    .addOption(PRIORITY)
    .option('--json', 'print JSON')
    .addHelpText('after', "\nExample: tintladder add palette.json --pile 'blue=1,white=3' --lab '52,2,-18'")
    .action(async (file: string, options: AddOptions) => {
      const { runAdd } = await import('../jobs/mix.ts');
      runAdd(file, options, output);
    });

  withWhite(program.command('limits').description('what the palette can reach'))
    .argument('<profile>', 'palette profile')
    .option(...ONLY)
    .option('--hues <number>', 'hues looked at, evenly spaced', whole(4, 72), 12)
    .option('--json', 'print JSON')
    .action(async (file: string, options: LimitsOptions) => {
      const { runLimits } = await import('../jobs/mix.ts');
      runLimits(file, options, output);
    });

  withWhite(
    program.command('string').description('equal value steps from dark to light, each with its recipe'),
  )
    .argument('<profile>', 'palette profile')
    .option(...ONLY)
    .option('--steps <number>', 'how many', whole(2, 60), 9)
    .option('--grams <grams>', 'grams of each', positive, 10)
    .option('--lean <number>', 'warm (above 0) or cool by this much all along, CIELAB units', real)
    .option('--tube <id>', 'one tube let down with the white')
    .option('--from <value>', 'Munsell value to begin at (default: the darkest there is)', real)
    .option('--to <value>', 'Munsell value to end at (default: the lightest there is)', real)
    .option('--scale <grams>', 'smallest step of the scale: steps come in whole steps of it', positive)
    .option('--smallest-pour <grams>', 'least that is put on that scale (default: ten steps)', positive)
    .option('--json', 'print JSON')
    .action(async (file: string, options: StringOptions) => {
      const { runString } = await import('../jobs/mix.ts');
      runString(file, options, output);
    });
}

/** The wanted colour, the same words for every verb. */
export function withTarget(command: Command): Command {
  return command
    .argument('<profile>', 'palette profile')
    .option('--lab <L,a,b>', 'wanted colour in CIELAB under the illuminant and observer')
    .option('--reflectance <file>', 'wanted colour as 36 reflectance factors, 380 to 730 nm, in a JSON list');
}
