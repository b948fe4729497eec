import { connectHead } from '../../src/device/head/connect.ts';
import { PracticeHead } from '../../src/device/practice/practice-head.ts';
import { PracticeInstrument } from '../../src/device/practice/practice-instrument.ts';
import { SerialTransport } from '../../src/device/serial/serial-transport.ts';
import { systemClock } from '../../src/device/serial/system-clock.ts';
import type { LineTransport } from '../../src/device/transport.ts';
import { listedPorts } from '../../server/instrument/ports.ts';
import { type Output, printJson, table } from '../output.ts';
import type { ReadOptions } from '../verbs/instrument.ts';

export async function runPorts(options: { readonly json?: boolean }, output: Output): Promise<void> {
  const { ports, sentence } = await listedPorts();
  if (options.json) return printJson(output, ports);
  if (ports.length === 0) return output.out(sentence);
  const rows = ports.map((p) => [
    p.path,
    p.label,
    [p.vendorId, p.productId].filter(Boolean).join(':') || '-',
  ]);
  return output.out(table(['port', 'what', 'USB id'], rows));
}

export async function runRead(options: ReadOptions, output: Output): Promise<void> {
  const transport = transportFor(options);
  transport.onWaiting = (fault) => output.err(fault.message);
  const head = await connectHead(transport, systemClock);
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
}

function transportFor(options: ReadOptions): LineTransport {
  if (options.port === 'practice') return new PracticeHead(new PracticeInstrument(systemClock));
  return new SerialTransport(options.port, { baudRate: options.baud });
}
