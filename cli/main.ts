import { Command, CommanderError } from 'commander';
import { z } from 'zod';
import { problemOf } from '../server/problem-of.ts';
import { VERSION } from '../server/version.ts';
import { type Output, terminal } from './output.ts';
import { CommandProblem } from './problem.ts';
import { addAdviceVerbs } from './verbs/advice.ts';
import { addCheck } from './verbs/check.ts';
import { addExchangeVerbs } from './verbs/exchange.ts';
import { addFit } from './verbs/fit.ts';
import { addInstrumentVerbs } from './verbs/instrument.ts';
import { addMixVerbs } from './verbs/mix.ts';
import { addPredict } from './verbs/predict.ts';
import { addRenewVerbs } from './verbs/renew.ts';
import { addServe } from './verbs/serve.ts';
import { addStoreVerbs } from './verbs/store.ts';

export function makeProgram(output: Output): Command {
  const program = new Command('tintladder')
    .description('Measure a palette of oil paint tubes and mix from what was measured.')
    .version(VERSION, '-V, --version', 'print the version')
    .showHelpAfterError('("tintladder --help", or "tintladder <verb> --help", shows what is allowed)')
    .configureOutput({ writeOut: (text) => output.out(text), writeErr: (text) => output.err(text) })
    .exitOverride()
    .addHelpText(
      'after',
      '\nExit codes: 0 done, 1 it could not be done, 2 asked for in the wrong way.\n' +
        'Paint can hurt: gloves, fresh air, no eating at work; the safety data sheet of each tube comes first.',
    );
  addFit(program, output);
  addCheck(program, output);
  addPredict(program, output);
  addMixVerbs(program, output);
  addAdviceVerbs(program, output);
  addExchangeVerbs(program, output);
  addRenewVerbs(program, output);
  addServe(program, output);
  addInstrumentVerbs(program, output);
  addStoreVerbs(program, output);
  for (const verb of program.commands) {
    verb.exitOverride().showHelpAfterError(`("tintladder ${verb.name()} --help" shows what is allowed)`);
    verb.configureOutput(program.configureOutput());
  }
  return program;
}

/** Runs one command line (without node and script). @returns the exit code: 0, 1 or 2 */
export async function main(args: readonly string[], output: Output = terminal): Promise<number> {
  try {
    const program = makeProgram(output);
    if (args.length === 0) {
      program.outputHelp();
      return 2;
    }
    await program.parseAsync([...args], { from: 'user' });
    return 0;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    if (error instanceof CommandProblem) {
      if (error.message) output.err(error.message);
      return error.exitCode;
    }
    if (error instanceof z.ZodError) {
      const [issue] = error.issues;
      output.err(
        `"${issue?.path.join('.') ?? ''}" cannot be taken: ${issue?.message ?? 'not as described'}; "tintladder --help" shows what is allowed.`,
      );
      return 2;
    }
    const problem = problemOf(error);
    if (problem) {
      output.err(problem.message);
      return 1;
    }
    output.err(
      `The program failed at this (${error instanceof Error ? error.message : String(error)}); nothing was changed.`,
    );
    if (process.env['TINTLADDER_DEBUG'] && error instanceof Error) output.err(error.stack ?? '');
    return 1;
  }
}
