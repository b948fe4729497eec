/**
 * Any key reads: a foot pedal sends whatever its maker chose. Left alone are keys that move about the page, keys held
 * with a modifier, keys typed into a field, and Enter or space on something that takes them itself.
 */
import type { ReactiveController, ReactiveControllerHost } from 'lit';

const MOVING = new Set([
  'Tab',
  'Escape',
  'Shift',
  'Control',
  'Alt',
  'Meta',
  'CapsLock',
  'ContextMenu',
  'ArrowUp',
  'ArrowDown',
  'ArrowLeft',
  'ArrowRight',
  'Home',
  'End',
  'F5',
  'F11',
  'F12',
]);
const TYPED_INTO = 'input:not([type=radio]):not([type=checkbox]):not([type=file]), textarea, select';
const PRESSED = 'button, a, summary, input, select';

/** True when a key press means "read". */
export function meansRead(event: KeyboardEvent): boolean {
  if (event.defaultPrevented || event.repeat || event.isComposing) return false;
  if (event.ctrlKey || event.altKey || event.metaKey || MOVING.has(event.key)) return false;
  const path = event.composedPath();
  // A slip of paper lies over the bench: its keys are its own.
  if (path.some((node) => node instanceof HTMLDialogElement)) return false;
  const from = path[0];
  if (!(from instanceof Element)) return true;
  if (from.matches(TYPED_INTO)) return false;
  const presses = event.key === 'Enter' || event.key === ' ';
  return !(presses && from.matches(PRESSED));
}

/** Listens for the whole page while its host is shown. Backspace takes back. */
export class AnyKey implements ReactiveController {
  readonly #read: (key: string) => void;
  readonly #undo: () => void;

  constructor(host: ReactiveControllerHost, read: (key: string) => void, undo: () => void) {
    this.#read = read;
    this.#undo = undo;
    host.addController(this);
  }

  readonly #pressed = (event: KeyboardEvent): void => {
    if (!meansRead(event)) return;
    event.preventDefault();
    if (event.key === 'Backspace') this.#undo();
    else this.#read(event.key);
  };

  hostConnected(): void {
    window.addEventListener('keydown', this.#pressed);
  }
  hostDisconnected(): void {
    window.removeEventListener('keydown', this.#pressed);
  }
}
