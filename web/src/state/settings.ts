/** What this person chose for this screen: theme, language, sound, speech, viewing lamp. Kept in the browser only. */
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { WhiteName } from '../../../src/colour/illuminant.ts';

export const THEMES = ['middle', 'light', 'dark'] as const;
export type Theme = (typeof THEMES)[number];
export const LANGUAGES = ['en', 'de'] as const;
export type Language = (typeof LANGUAGES)[number];
/** The lamps a patch can be simulated under. Readings are compared under one white; this only changes the drawing. */
export const LAMPS = [
  'D65/10deg',
  'D50/10deg',
  'A/10deg',
  'LED-B3/10deg',
] as const satisfies readonly WhiteName[];
export type Lamp = (typeof LAMPS)[number];

export interface Settings {
  readonly theme: Theme;
  readonly language: Language;
  /** A tone when a reading is kept or sent back. */
  readonly tone: boolean;
  /** Says the step and the result aloud. */
  readonly speech: boolean;
  readonly lamp: Lamp;
  /** Screens on which this person has put the first-run walk away. */
  readonly walkDone: boolean;
}

const KEY = 'tintladder.settings';

function oneOf<T extends string>(allowed: readonly T[], value: unknown, otherwise: T): T {
  return allowed.find((a) => a === value) ?? otherwise;
}

function kept(): Record<string, unknown> {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    return value && typeof value === 'object' ? (value as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

function read(): Settings {
  const k = kept();
  // Without a page (in a test, in a worker) there are the defaults.
  const root = globalThis.document?.documentElement;
  return {
    theme: oneOf(THEMES, root?.dataset['theme'], 'middle'),
    language: oneOf(LANGUAGES, root?.lang, 'en'),
    tone: k['tone'] === true,
    speech: k['speech'] === true,
    lamp: oneOf(LAMPS, k['lamp'], 'D65/10deg'),
    walkDone: k['walkDone'] === true,
  };
}

let current = read();
const listeners = new Set<() => void>();

export function settings(): Settings {
  return current;
}

/** Changes some settings, keeps them and tells every part that shows words. */
export function changeSettings(change: Partial<Settings>): void {
  current = { ...current, ...change };
  const root = globalThis.document?.documentElement;
  if (root) {
    root.dataset['theme'] = current.theme;
    root.lang = current.language;
  }
  try {
    localStorage.setItem(KEY, JSON.stringify(current));
    // before-paint.js reads these two.
    localStorage.setItem('tintladder.theme', current.theme);
    localStorage.setItem('tintladder.language', current.language);
  } catch {
    // A browser that keeps nothing still works for this visit.
  }
  for (const listener of listeners) listener();
}

/** Draws its host again when a setting changes. */
export class SettingsController implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  constructor(host: ReactiveControllerHost) {
    this.#host = host;
    host.addController(this);
  }
  readonly #changed = (): void => this.#host.requestUpdate();
  hostConnected(): void {
    listeners.add(this.#changed);
  }
  hostDisconnected(): void {
    listeners.delete(this.#changed);
  }
}
