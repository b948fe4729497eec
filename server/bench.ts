import type { CheckResults } from './checking/check-results.ts';
import type { Events } from './events.ts';
import type { Db } from './store/open-store.ts';
import type { BrowserPorts } from './instrument/browser-ports.ts';
import type { CheckTileStore } from './instrument/check-tile.ts';
import type { LiveInstrument } from './instrument/live-instrument.ts';
import type { MixRunner } from './mixing/mix-runner.ts';
import type { ByButton } from './reading/by-button.ts';
import type { FitRunner } from './fitting/fit-runner.ts';

/** Everything the routes work on. `main.ts` makes the real one, a test makes its own. */
export interface Bench {
  readonly db: Db;
  /** ISO 8601, UTC. */
  readonly now: () => string;
  readonly events: Events;
  readonly instrument: LiveInstrument;
  /** Ports that pages have opened on their own computers. */
  readonly browserPorts: BrowserPorts;
  /** The check tile over its sessions. */
  readonly tiles: CheckTileStore;
  /** What a press of the head's own button reads. */
  readonly button: ByButton;
  readonly fits: FitRunner;
  readonly mixing: MixRunner;
  readonly checking: CheckResults;
  readonly startedAt: string;
  /** Where the built pages are. */
  readonly webFolder: string;
}
