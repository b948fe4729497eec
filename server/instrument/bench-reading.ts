import type { Clock } from '../../src/device/clock.ts';
import type { FindHead } from '../../src/device/serial/serial-search.ts';
import type { LineTransport } from '../../src/device/transport.ts';
import type { Instrument, LiveReading } from '../api/instrument.ts';
import type { ReadingForm } from '../api/readings.ts';
import type { BrowserPorts } from './browser-ports.ts';
import type { CheckTileStore } from './check-tile.ts';
import type { Db } from '../store/open-store.ts';
import type { WhiteBlocks } from './white-blocks.ts';

/** A reading that was taken and calibrated, ready to be kept. */
export interface BenchReading {
  readonly source: 'head' | 'practice';
  readonly form: ReadingForm;
  readonly values: readonly number[];
  /** Everything it was worked out from. */
  readonly raw: unknown;
  readonly live: LiveReading;
}

/** The ports of this computer, as the bench knows them. */
export interface Ports {
  readonly openPort: (path: string, baudRate: number) => Promise<LineTransport>;
  /** Remembers what sits at `path` now, so that it is found again after its cable was pulled. */
  readonly searchPort: (path: string, baudRate: number) => Promise<FindHead>;
}

export interface InstrumentOptions extends Ports {
  readonly db: Db;
  readonly browserPorts: BrowserPorts;
  readonly clock: Clock;
  readonly now: () => string;
  readonly tiles: CheckTileStore;
  readonly blocks: Pick<WhiteBlocks, 'take'>;
  /** A white closed blocks: readings that were open are judged now. */
  readonly judged: () => void;
  readonly changed: (instrument: Instrument) => void;
  readonly read: (reading: LiveReading) => void;
}
