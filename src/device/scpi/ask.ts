import { DeviceFault, isDeviceFault } from '../fault.ts';
import type { FaultKind } from '../fault.ts';
import { QUERY_MS } from './query-line.ts';
import type { QueryLine } from './query-line.ts';
import { resync } from './resync.ts';

/** A question with the check that turns its answer into a value. */
export interface Question<T> {
  readonly send: string;
  readonly timeoutMs?: number;
  /** Done each time just before it is sent, repeat included; a fault in it counts as one of the question. */
  readonly prepare?: (line: QueryLine) => Promise<void>;
  /** Throws a DeviceFault when the answer is not what was asked for. */
  readonly read: (answer: string) => T;
}

/** What head procedures talk through. */
export interface Conversation {
  ask<T>(question: Question<T>): Promise<T>;
}

/** Called when the head has restarted or lost its settings; resolves once all is as it was. */
export type Recover = () => Promise<void>;

export interface RetryCount {
  retries: number;
}

/** Doubts about one answer: the line is brought back into step and the question asked once more. */
const ASK_AGAIN: ReadonlySet<FaultKind> = new Set([
  'timeout',
  'overlong',
  'crc',
  'no-crc',
  'frame',
  'stale',
  'sequence',
  'settings',
]);

/**
 * Asks, and asks once more after a doubt. Never after `saturated`, `hardware`, `refused`: the painter must choose.
 * @throws DeviceFault the second fault, or `out-of-sync` when the line cannot be brought back
 */
export async function askTwice<T>(
  line: QueryLine,
  question: Question<T>,
  count: RetryCount,
  recover?: Recover,
): Promise<T> {
  try {
    return await askOnce(line, question);
  } catch (error) {
    if (!isDeviceFault(error) || !ASK_AGAIN.has(error.kind)) throw error;
    count.retries++;
    const state = await resync(line);
    if (state === 'lost') {
      throw line.isOpen
        ? new DeviceFault('out-of-sync', { port: line.portName, asked: question.send }, { cause: error })
        : new DeviceFault('disconnected', { port: line.portName, asked: question.send }, { cause: error });
    }
    if (state === 'restarted' || error.kind === 'settings') {
      if (!recover) throw error;
      await recover();
    }
    return await askOnce(line, question);
  }
}

async function askOnce<T>(line: QueryLine, question: Question<T>): Promise<T> {
  await question.prepare?.(line);
  return question.read(await line.exchange(question.send, question.timeoutMs ?? QUERY_MS));
}
