import type { Clock } from '../../src/device/clock.ts';
import type { LineTransport } from '../../src/device/transport.ts';
import type { Instrument, LiveReading } from '../api/instrument.ts';
import type { ReadingForm } from '../api/readings.ts';
import type { CheckTileStore } from './check-tile.ts';

/** A reading that was taken and calibrated, ready to be kept. */
export interface BenchReading {
  readonly source: 'head' | 'practice';
  readonly form: ReadingForm;
  readonly values: readonly number[];
  /** Everything it was worked out from. */
  readonly raw: unknown;
  readonly live: LiveReading;
}

export interface InstrumentOptions {
  readonly clock: Clock;
  readonly now: () => string;
  /** Opens a port; only `main.ts` knows how. */
  readonly openPort: (path: string, baudRate: number) => Promise<LineTransport>;
  readonly tiles: CheckTileStore;
  readonly changed: (instrument: Instrument) => void;
  readonly read: (reading: LiveReading) => void;
}
