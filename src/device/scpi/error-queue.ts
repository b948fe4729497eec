import { DeviceFault } from '../fault.ts';
import { splitOutsideQuotes, unquote } from '../framing/fields.ts';
import type { Conversation } from './ask.ts';
import { say } from '../sentences.ts';

/** One entry of the head's error queue; code 0 is "No error". */
export interface QueueEntry {
  readonly code: number;
  readonly text: string;
  /** What follows `;` inside the text: a channel's name with 510. */
  readonly detail: string | undefined;
}

/** More than the queue holds (16) is not a queue. */
const LONGEST_QUEUE = 17;
const UNDEFINED_HEADER = -113;

/** Parses `-222,"Data out of range"`. @throws DeviceFault `frame` */
export function readQueueEntry(answer: string): QueueEntry {
  const fields = splitOutsideQuotes(answer, ',');
  const [code, text] = fields ?? [];
  const words = text === undefined ? undefined : unquote(text);
  if (fields?.length !== 2 || code === undefined || !/^[+-]?\d{1,5}$/.test(code) || words === undefined) {
    throw new DeviceFault('frame', {
      asked: 'SYST:ERR?',
      seen: say('in-place-of-entry', { seen: answer }),
    });
  }
  const cut = words.indexOf(';');
  return {
    code: Number(code),
    text: cut < 0 ? words : words.slice(0, cut),
    detail: cut < 0 ? undefined : words.slice(cut + 1),
  };
}

/** Reads the queue until it is empty. */
export async function drainErrors(talk: Conversation): Promise<QueueEntry[]> {
  const entries: QueueEntry[] = [];
  while (entries.length < LONGEST_QUEUE) {
    const entry = await talk.ask({ send: 'SYST:ERR?', read: readQueueEntry });
    if (entry.code === 0) break;
    entries.push(entry);
  }
  return entries;
}

/**
 * Sends a command that has no answer together with `SYST:ERR?`: without that a head that refused it would stay silent.
 * @param allowed what may be set, for the sentence
 * @throws DeviceFault `unsupported` for an unknown header, `refused` for anything else in the queue
 */
export async function command(talk: Conversation, text: string, allowed?: string): Promise<void> {
  const entry = await talk.ask({ send: `${text};:SYST:ERR?`, read: readQueueEntry });
  if (entry.code !== 0) throw await refusalOf(talk, text, entry, allowed);
}

/** The fault an entry of the queue stands for; empties the queue. */
export async function refusalOf(
  talk: Conversation,
  text: string,
  entry: QueueEntry,
  allowed?: string,
): Promise<DeviceFault> {
  await drainErrors(talk);
  if (entry.code === UNDEFINED_HEADER)
    return new DeviceFault('unsupported', { asked: text, code: entry.code });
  const seen = `${entry.code}, ${entry.text}${entry.detail === undefined ? '' : `: ${entry.detail}`}`;
  return new DeviceFault('refused', {
    asked: text,
    code: entry.code,
    seen,
    ...(allowed === undefined ? {} : { allowed }),
  });
}
