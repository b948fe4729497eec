import { sleep } from '../clock.ts';
import { DeviceFault, isDeviceFault } from '../fault.ts';
import type { QueryLine } from '../scpi/query-line.ts';
import { parseIdentity } from './identity.ts';
import type { HeadIdentity } from './identity.ts';
import { say } from '../sentences.ts';

const PROBE_MS = 300;
const SETTLE_MS = 50;

/**
 * Finds out whether a head is on the line, by `*IDN?` and nothing else: boards that reset when the port opens are deaf
 * for a second or two and babble first, and a device that is no head must not be disturbed.
 * @throws DeviceFault `no-answer`, `disconnected`
 */
export async function probe(line: QueryLine, wholeMs: number): Promise<Omit<HeadIdentity, 'protocol'>> {
  const end = line.clock.now() + wholeMs;
  let heard: string | undefined;
  const isIdentity = (text: string): boolean => {
    const found = parseIdentity(text) !== undefined;
    if (!found) heard = text;
    return found;
  };
  while (line.clock.now() < end) {
    const asked = line.clock.now();
    try {
      const identity = parseIdentity(
        await line.exchange('*IDN?', Math.min(PROBE_MS, end - asked), isIdentity),
      );
      await sleep(line.clock, SETTLE_MS); // late answers to earlier probes fall into this pause
      line.discardPartial();
      if (identity) return identity;
    } catch (error) {
      if (!isDeviceFault(error) || error.kind === 'disconnected') throw error;
      if (error.kind === 'overlong') heard = say('flood');
      // An overlong run ends a probe early: do not ask a flooding device faster than a silent one.
      await sleep(line.clock, Math.max(0, Math.min(asked + PROBE_MS, end) - line.clock.now()));
    }
  }
  const seen = heard === undefined ? {} : { seen: printable(heard) };
  throw new DeviceFault('no-answer', { port: line.portName, allowed: `${wholeMs / 1000} s`, ...seen });
}

function printable(text: string): string {
  const clean = text.slice(0, 40).replace(/[^ -~]/g, '.');
  return `"${clean}${text.length > 40 ? '...' : ''}"`;
}
