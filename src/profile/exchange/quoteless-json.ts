import { ExchangeProblem } from './spectral-table.ts';
import { say } from './sentences.ts';

/**
 * JSON inside a format whose strings cannot hold double quotes or letters beyond ASCII: single quotes stand for
 * double ones, and every apostrophe and non-ASCII letter of the content is a \u escape, so the way back is exact.
 */
export function quotelessJson(value: unknown): string {
  return JSON.stringify(value)
    .replaceAll("'", '\\u0027')
    .replace(/[^\x20-\x7e]/g, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`)
    .replaceAll('"', "'");
}

/** @throws ExchangeProblem when the text is not what `quotelessJson` writes. */
export function fromQuotelessJson(text: string): unknown {
  try {
    return JSON.parse(text.replaceAll("'", '"'));
  } catch {
    throw new ExchangeProblem(say('odd-masses', { text: text.slice(0, 40) }));
  }
}
