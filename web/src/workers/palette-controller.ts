import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { PaletteProfile } from '../../../src/profile/schema.ts';
import type { ProfileSummary } from '../../../server/api/profiles.ts';
import { call } from '../api/call.ts';
import { listen } from '../api/events.ts';
import { WorkBench } from './work-bench.ts';

/** The palette profile mixing works from now, or none yet. */
export type OpenPalette =
  | { readonly status: 'pending' }
  | { readonly status: 'none' }
  | { readonly status: 'error'; readonly error: Error }
  | { readonly status: 'open'; readonly profile: PaletteProfile; readonly summary: ProfileSummary };

/** For what must answer within a frame: predictions under a moving slider. */
export const quickBench = new WorkBench({ short: true });
/** For what takes longer: searches, limits, a study. Stopping it stops nothing else. */
export const searchBench = new WorkBench();

let current: OpenPalette = { status: 'pending' };
let asked = false;
const hosts = new Set<ReactiveControllerHost>();

async function fetchPalette(): Promise<void> {
  try {
    // Asked first, so that having no profile yet is an empty state and not a failed request.
    const { currentProfileId } = await call('state');
    if (currentProfileId === null) current = { status: 'none' };
    else {
      const { profile, summary } = await call('getCurrentProfile');
      current = { status: 'open', profile, summary };
      quickBench.open(profile);
      searchBench.open(profile);
    }
  } catch (cause) {
    current = { status: 'error', error: cause instanceof Error ? cause : new Error(String(cause)) };
  }
  for (const host of hosts) host.requestUpdate();
}

function start(): void {
  if (asked) return;
  asked = true;
  void fetchPalette();
  listen('hello', () => void fetchPalette());
  listen('changed', ({ what }) => {
    if (what === 'profiles' || what === 'palettes') void fetchPalette();
  });
}

/** Draws its host again when another palette is opened; `changed` is called then, and at once when one is open. */
export class PaletteController implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #changed: (palette: OpenPalette) => void;
  #told: OpenPalette | undefined;

  constructor(host: ReactiveControllerHost, changed: (palette: OpenPalette) => void = () => undefined) {
    this.#host = host;
    this.#changed = changed;
    host.addController(this);
  }

  get value(): OpenPalette {
    return current;
  }

  hostConnected(): void {
    hosts.add(this.#host);
    start();
  }

  hostUpdate(): void {
    if (this.#told === current) return;
    this.#told = current;
    if (current.status === 'open') this.#changed(current);
  }

  hostDisconnected(): void {
    hosts.delete(this.#host);
  }
}
