import type { HistoryEntry } from '../store/history.ts';

/** A thing done that undo can take back. */
export type Deed = Extract<HistoryEntry, { kind: 'reading' | 'weigh' | 'decide' }>;

/** What the history of a ladder or a check comes to. */
export interface Folded {
  /** Grams per swatch as last weighed. */
  readonly grams: ReadonlyMap<string, readonly number[]>;
  /** Readings taken one by one on this bench; those that came in a whole file are not in any history. */
  readonly read: ReadonlySet<string>;
  /** Readings that were undone. */
  readonly takenBack: ReadonlySet<string>;
  /** What the painter decided about a reading, the last word. */
  readonly decided: ReadonlyMap<string, { readonly keep: boolean; readonly reason: string }>;
  readonly closed: boolean;
  /** What undo would take back and what redo would do again. */
  readonly undo: Deed | undefined;
  readonly redo: Deed | undefined;
}

/**
 * Plays a history from its beginning. Undo takes back the last thing done, redo does it again, and anything new done
 * after an undo makes an end of what could be redone; the entries themselves all stay.
 */
export function foldHistory(entries: readonly HistoryEntry[]): Folded {
  const done: Deed[] = [];
  let undone: Deed[] = [];
  const everRead = new Set<string>();
  let closed = false;
  for (const entry of entries) {
    switch (entry.kind) {
      case 'undo': {
        const last = done.pop();
        if (last) undone.push(last);
        break;
      }
      case 'redo': {
        const again = undone.pop();
        if (again) done.push(again);
        break;
      }
      case 'close':
        closed = true;
        break;
      case 'open':
        closed = false;
        break;
      default:
        if (entry.kind === 'reading') everRead.add(entry.readingId);
        done.push(entry);
        undone = [];
    }
  }
  const grams = new Map<string, readonly number[]>();
  const decided = new Map<string, { keep: boolean; reason: string }>();
  const kept = new Set<string>();
  for (const deed of done) {
    if (deed.kind === 'weigh') grams.set(deed.swatchId, deed.grams);
    else if (deed.kind === 'decide') decided.set(deed.readingId, { keep: deed.keep, reason: deed.reason });
    else kept.add(deed.readingId);
  }
  const takenBack = new Set([...everRead].filter((id) => !kept.has(id)));
  return { grams, read: everRead, takenBack, decided, closed, undo: done.at(-1), redo: undone.at(-1) };
}
