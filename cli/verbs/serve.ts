import type { Command } from 'commander';
import { serve, type ServeOptions, withServeOptions } from '../../server/serve.ts';
import type { Output } from '../output.ts';
import { CommandProblem } from '../problem.ts';

export function addServe(program: Command, output: Output): void {
  withServeOptions(
    program.command('serve').alias('start').description('serve the bench to a browser on this computer'),
  ).action(async (options: ServeOptions) => {
    const code = await serve(options, output);
    // It has said why already.
    if (code !== 0) throw new CommandProblem('', code === 2 ? 2 : 1);
  });
}
