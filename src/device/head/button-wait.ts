import { DeviceFault } from '../fault.ts';
import { splitOutsideQuotes } from '../framing/fields.ts';
import { parseNaturalNumber } from '../framing/number.ts';
import type { Conversation, Question } from '../scpi/ask.ts';
import { readQueueEntry, refusalOf } from '../scpi/error-queue.ts';

/** How things stood on the head at the moment it began to wait. */
export interface ButtonWait {
  /** Number of the last frame before: the press takes the next one. */
  readonly frame: number;
  /** Presses counted up to then; `undefined` where the head does not count (protocol 1.0). */
  readonly presses: number | undefined;
}

/** One message, so that nothing can come between its units: the old wait ends, then the new one begins. */
const COUNTED = 'ABOR;:TRIG:SOUR EXT;:SENS:FRAM?;:INIT;:TRIG:COUN?;:SYST:ERR?';
const UNCOUNTED = 'ABOR;:TRIG:SOUR EXT;:SENS:FRAM?;:INIT;:SYST:ERR?';

/**
 * Ends whatever the head waits for and begins a wait of its own.
 * @param known told of the wait as soon as its answer is read, before anything else can be asked
 * @returns presses counted up to then
 * @throws DeviceFault `refused`, `unsupported`, and those of the line
 */
export async function beginWait(
  talk: Conversation,
  counts: boolean,
  known: (wait: ButtonWait) => void,
): Promise<number | undefined> {
  const send = counts ? COUNTED : UNCOUNTED;
  const { wait, entry } = await talk.ask({
    send,
    read: (answer) => {
      const units = splitOutsideQuotes(answer, ';') ?? [];
      const frame = parseNaturalNumber(units[0] ?? '');
      const presses = counts ? parseNaturalNumber(units[1] ?? '') : undefined;
      if (units.length !== (counts ? 3 : 2) || frame === undefined || (counts && presses === undefined))
        throw new DeviceFault('frame', { asked: send, seen: `"${answer.slice(0, 40)}"` });
      const answered = { wait: { frame, presses }, entry: readQueueEntry(units.at(-1)!) };
      if (answered.entry.code === 0) known(answered.wait);
      return answered;
    },
  });
  if (entry.code !== 0) throw await refusalOf(talk, send, entry);
  return wait.presses;
}

/** Ends the wait. Answers with the number of the last frame. */
export const endWait: Question<number> = {
  send: 'ABOR;:SENS:FRAM?',
  read: (answer) => {
    const frame = parseNaturalNumber(answer);
    if (frame === undefined) throw new DeviceFault('frame', { asked: 'SENS:FRAM?', seen: `"${answer}"` });
    return frame;
  },
};
