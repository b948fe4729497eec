import type { z } from 'zod';
import type { PracticeSurface } from '../../src/device/practice/surfaces.ts';
import type { takeReadingSchema } from '../api/readings.ts';
import type { Bench } from '../bench.ts';
import { fromFile, fromTyped, type Incoming } from './incoming.ts';

/**
 * A reading by the head, or one typed or from a file, as equals. `surface` is what the practice instrument is laid on;
 * it is asked for only when that instrument is in use.
 * @throws DeviceFault, ReadingRefused, HttpProblem; nothing is stored then
 */
export async function takeOnBench(
  bench: Bench,
  wanted: z.infer<typeof takeReadingSchema>,
  surface: () => PracticeSurface,
): Promise<Incoming> {
  switch (wanted.source) {
    case 'head': {
      const { instrument } = bench;
      instrument.holdReady();
      const taken = await instrument.read(instrument.practice ? surface() : undefined);
      const { source, form, values, raw } = taken;
      return { reading: { source, form, values, raw }, findings: [...taken.live.findings] };
    }
    case 'typed':
      return fromTyped(wanted.reading, 'typed');
    case 'file':
      return fromFile(wanted);
  }
}
