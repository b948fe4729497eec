import { sleep } from '../clock.ts';
import { isDeviceFault } from '../fault.ts';
import type { QueryLine } from './query-line.ts';

const QUIET_MS = 150;
const PROOF_MS = 300;
const TRIES = 3;

/** `restarted`: the head answers in turn, but its checksums have gone, as they do when it restarts. */
export type Resynced = 'in-sync' | 'restarted' | 'lost';

/**
 * Brings question and answer back into step after any doubt: end a half-received command, let the line fall quiet,
 * forget partial lines, prove it. Try k asks `*OPC?` k times in one message, so that the late answer to an earlier
 * try cannot pass for this one. Ends with an empty error queue (the ended half command left -113 there).
 */
export async function resync(line: QueryLine): Promise<Resynced> {
  if (!line.isOpen) return 'lost';
  const checksum = line.checksum;
  try {
    await line.send('');
    for (let attempt = 1; attempt <= TRIES; attempt++) {
      await sleep(line.clock, QUIET_MS);
      line.discardPartial();
      const outcome = await prove(line, attempt, checksum);
      if (outcome !== 'again') {
        if (outcome === 'in-sync') await line.send('*CLS');
        return outcome;
      }
    }
  } catch (error) {
    if (!isDeviceFault(error)) throw error;
  } finally {
    line.checksum = checksum;
  }
  return 'lost';
}

async function prove(line: QueryLine, times: number, checksum: boolean): Promise<Resynced | 'again'> {
  const wanted = Array.from({ length: times }, () => '1').join(';');
  line.checksum = checksum;
  try {
    return (await line.exchange(opcTimes(times), PROOF_MS)) === wanted ? 'in-sync' : 'again';
  } catch (error) {
    if (!isDeviceFault(error)) throw error;
    if (error.kind === 'disconnected') return 'lost';
    if (error.kind === 'no-crc' && error.details.seen === wanted) return 'restarted';
    return 'again';
  }
}

function opcTimes(times: number): string {
  return Array.from({ length: times }, () => '*OPC?').join(';');
}
