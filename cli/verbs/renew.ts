import type { Command } from 'commander';
import type { Output } from '../output.ts';

export interface MergeOptions {
  readonly bridge?: string;
  readonly sameIds?: string;
  readonly secondWhite?: string;
  readonly output: string;
}
export interface ReplaceOptions {
  readonly id: string;
  readonly label?: string;
  readonly inSet?: string;
  readonly oldTube: 'where it helps' | 'always' | 'never';
  readonly recipe?: string[];
  readonly output: string;
  readonly json?: boolean;
}
export interface RereadOptions {
  readonly json?: boolean;
}

/** The verbs that keep a palette true over the years: replace, merge, reread. */
export function addRenewVerbs(program: Command, output: Output): void {
  program
    .command('replace')
    .description("put a new tube in an old one's place from a short ladder, and say what changes")
    .argument('<profile>', 'palette profile')
    .argument('<old-id>', 'tube that is replaced')
    .argument('<short-ladder>', 'swatch set: masstone of the white and of the new tube, and one tint (1:4)')
    .requiredOption('--id <id>', "the new tube's id; the old one's where the same tube was measured again")
    .option('--label <text>', 'its label (default: the label in the swatch set)')
    .option('--in-set <id>', 'the new tube in the swatch set, where that holds several')
    .option(
      '--old-tube <when>',
      "whether the old tube lends the shape of its curves: 'where it helps', always, never",
      'where it helps',
    )
    .option('--recipe <masses...>', "recipes to carry over, in grams: 'blue=1,white=3'")
    .requiredOption('-o, --output <file>', 'profile to write; - writes to standard output')
    .option('--json', 'print the report as JSON')
    .addHelpText('after', REPLACE_HELP)
    .action(async (profile: string, oldId: string, set: string, options: ReplaceOptions) => {
      const { runReplace } = await import('../jobs/renew.ts');
      runReplace(profile, oldId, set, options, output);
    });

  program
    .command('merge')
    .description('one profile from two: on one white, or through a bridge where the whites differ')
    .argument('<first>', 'palette profile whose white stays')
    .argument('<second>', 'palette profile that joins it')
    .option(
      '--bridge <file>',
      'where the whites differ: swatch set with both and one dark tube let down 1:4 with each',
    )
    .option(
      '--second-white <id>',
      "the second profile's white in the bridge (default: its id in the profile)",
    )
    .option(
      '--same-ids <how>',
      "an id in both profiles: 'combined' is one tube, its fits joined; 'apart' is two (default: combined on one white, apart through a bridge)",
    )
    .requiredOption('-o, --output <file>', 'profile to write; - writes to standard output')
    .addHelpText('after', MERGE_HELP)
    .action(async (first: string, second: string, options: MergeOptions) => {
      const { runMerge } = await import('../jobs/renew.ts');
      runMerge(first, second, options, output);
    });

  program
    .command('reread')
    .description('say whether a palette still holds, from three swatches read again')
    .argument('<first>', 'swatch set with the first readings')
    .argument('<again>', 'swatch set with the same swatches read again')
    .option('--json', 'print JSON')
    .addHelpText('after', '\nSwatches are paired by their ids: a white, a tint and a masstone at the least.')
    .action(async (first: string, again: string, options: RereadOptions) => {
      const { runReread } = await import('../jobs/renew.ts');
      runReread(first, again, options, output);
    });
}

const MERGE_HELP = `
The two may be read with different instruments of one geometry: a spectral head, a head with a few bands, XYZ from a book.

Examples: tintladder merge spectral.json book.json -o palette.json
          tintladder merge first.json second.json --bridge bridge.json -o both.json`;

const REPLACE_HELP = `
The report says how the new tube differs beyond doubt (masstone, tints, undertone, strength, hiding) and what becomes
of each recipe. 'where it helps': the old tube lends its shape to a ladder read in a few bands or three channels.

Example: tintladder replace palette.json blue short.json --id blue-2 --recipe 'blue=1,white=4' -o palette-2.json`;
