import { type DeviceFault, isDeviceFault } from '../../src/device/fault.ts';
import type { HeadReading } from '../../src/device/head/reading.ts';
import type { ReadingRefused } from '../../src/calibrate/refusal.ts';
import type { Finding } from '../api/words.ts';
import { say } from '../api/sentences/instrument.ts';

/** What the head itself says about a light frame. */
export function lightFindings(light: HeadReading): Finding[] {
  const findings: Finding[] = [];
  if (light.settling) {
    findings.push({
      level: 'note',
      code: 'settling',
      sentence: say('lamp-warming'),
    });
  }
  return findings;
}

/** Why something was no reading. */
export function refusedFinding(error: DeviceFault | ReadingRefused): Finding {
  return isDeviceFault(error)
    ? {
        level: 'refused',
        code: error.kind,
        sentence: error.message,
        channels: [...(error.details.channels ?? [])],
      }
    : { level: 'refused', code: error.reason, sentence: error.message, channels: [...error.channels] };
}
