import { type Command, InvalidArgumentError } from 'commander';
import { connectHead } from '../../src/device/head/connect.ts';
import { PracticeHead } from '../../src/device/practice/practice-head.ts';
import { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import { SerialTransport } from '../../src/device/serial/serial-transport.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import type { LineTransport } from '../../src/device/transport.ts';
import { listedPorts } from '../../server/instrument/ports.ts';
import { type Output, printJson, table } from '../output.ts';

interface ReadOptions {
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
      const { ports, sentence } = await listedPorts();
      if (options.json) return printJson(output, ports);
      if (ports.length === 0) return output.out(sentence);
      const rows = ports.map((p) => [
        p.path,
        p.label,
        [p.vendorId, p.productId].filter(Boolean).join(':') || '-',
      ]);
      return output.out(table(['port', 'what', 'USB id'], rows));
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
      const head = await connectHead(transportFor(options), systemClock);
      try {
        if (options.gain !== undefined || options.aperture !== undefined) {
          await head.configure({
            ...(options.gain === undefined ? {} : { gain: options.gain }),
            ...(options.aperture === undefined ? {} : { apertureS: options.aperture / 1000 }),
          });
        }
        const { model, serial } = head.identity;
        if (!options.json) {
          output.out(
            `${model} ${serial} at ${head.geometry}, gain ${head.settings.gain}, ${(head.settings.apertureS * 1000).toFixed(1)} ms`,
          );
        }
        for (let n = 0; n < options.count; n += 1) {
          const dark = await head.readDark();
          const light = await head.read();
          if (options.json) {
            output.out(
              JSON.stringify({
                model,
                serial,
                geometry: head.geometry,
                channels: head.channels.map((c) => c.name),
                dark,
                light,
              }),
            );
          } else {
            const rows = head.channels.map((c, i) => [
              c.name,
              c.centreNm === undefined ? '-' : String(c.centreNm),
              String(dark.counts[i]),
              String(light.counts[i]),
            ]);
            output.out(table(['channel', 'nm', 'dark', 'light'], rows));
          }
        }
      } finally {
        await head.close();
      }
    });
}

function transportFor(options: ReadOptions): LineTransport {
  if (options.port === 'practice') return new PracticeHead(new PracticeInstrument(systemClock));
  return new SerialTransport(options.port, { baudRate: options.baud });
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
