import { type Command, InvalidArgumentError } from 'commander';
import type { Output } from '../output.ts';

export interface ReadOptions {
  readonly port: string;
  readonly baud: number;
  readonly count: number;
  readonly gain?: number;
  readonly aperture?: number;
  readonly dark?: boolean;
  readonly json?: boolean;
}

/** The verbs that speak with a head: ports, read. */
export function addInstrumentVerbs(program: Command, output: Output): void {
  program
    .command('ports')
    .description('list the serial ports a head may be on')
    .option('--json', 'print JSON')
    .action(async (options: { json?: boolean }) => {
      const { runPorts } = await import('../jobs/instrument.ts');
      await runPorts(options, output);
    });

  program
    .command('read')
    .description('read raw counts from a head, dark and light')
    .requiredOption(
      '--port <path>',
      'port of the head, such as /dev/ttyACM0 or COM3; "practice" is the practice instrument',
    )
    .option('--baud <rate>', 'baud rate', wholeNumber, 115_200)
    .option('-n, --count <number>', 'how many readings', wholeNumber, 1)
    .option('--gain <number>', 'gain, one of those the head has', positiveNumber)
    .option('--aperture <ms>', 'integration time, ms', positiveNumber)
    .option('--json', 'print JSON, a line a reading')
    .action(async (options: ReadOptions) => {
      const { runRead } = await import('../jobs/instrument.ts');
      await runRead(options, output);
    });
}

function wholeNumber(text: string): number {
  const n = Number(text);
  if (!Number.isInteger(n) || n < 1) throw new InvalidArgumentError('Give a whole number, 1 or more.');
  return n;
}

function positiveNumber(text: string): number {
  const n = Number(text);
  if (!(n > 0 && Number.isFinite(n))) throw new InvalidArgumentError('Give a number above zero.');
  return n;
}
