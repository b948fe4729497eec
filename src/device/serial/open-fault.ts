import { DeviceFault } from '../fault.ts';
import type { FaultKind } from '../fault.ts';

/**
 * serialport's native layer gives no error codes, only words: this is the one place that reads them. Texts as seen
 * with serialport 13 on Linux; the Windows and macOS ones are from its source.
 */
const BY_WORDS: readonly (readonly [RegExp, FaultKind])[] = [
  [/permission denied/i, 'permission'],
  [/access (is )?denied/i, 'busy-or-denied'],
  [/cannot lock port|resource (temporarily unavailable|busy)|device or resource busy/i, 'busy'],
  [/no such file or directory|file not found|no such device/i, 'missing'],
  [/inappropriate ioctl|setting custom baud rate|is a directory|not a tty|not a valid/i, 'not-a-serial-port'],
  [/bad file descriptor|\bEIO\b|\bENXIO\b|input\/output error|port is not open/i, 'disconnected'],
];

export function openFault(error: unknown, path: string): DeviceFault {
  const text = error instanceof Error ? error.message : String(error);
  const kind = BY_WORDS.find(([words]) => words.test(text))?.[1] ?? 'open-failed';
  return new DeviceFault(kind, { port: path, seen: text.replace(/^Error:?\s*/i, '') }, { cause: error });
}
