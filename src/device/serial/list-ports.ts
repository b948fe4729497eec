import { within } from '../clock.ts';
import type { Clock } from '../clock.ts';
import { loadSerialLibrary } from './serial-library.ts';
import type { ListedPort, SerialLibrary } from './serial-library.ts';
import { listFromSysfs } from './sysfs-ports.ts';
import { systemClock } from './system-clock.ts';
import { say } from '../sentences.ts';

/** A port to choose from. */
export interface SerialPortInfo extends ListedPort {
  /** Something is plugged in there by USB: show these first. Ports without are mostly phantoms. */
  readonly usb: boolean;
}

export interface ListOptions {
  readonly clock?: Clock;
  readonly library?: () => Promise<SerialLibrary>;
  readonly sysfs?: () => readonly ListedPort[];
  /** Default 2000. */
  readonly timeoutMs?: number;
}

/**
 * The serial ports of this computer, USB ones first. Never rejects and never hangs: on Linux serialport asks udevadm,
 * which may be missing (it rejects), failing (it answers with nothing) or hanging (it never answers); /sys is read
 * then. An empty list means "unknown", so a page must also let a path be typed.
 */
export async function listPorts(options: ListOptions = {}): Promise<SerialPortInfo[]> {
  const {
    clock = systemClock,
    library = loadSerialLibrary,
    sysfs = listFromSysfs,
    timeoutMs = 2000,
  } = options;
  let ports: readonly ListedPort[] = [];
  try {
    const asked = library().then((loaded) => loaded.list());
    ports = await within(clock, timeoutMs, asked, () => new Error(say('ports-too-long')));
  } catch {
    // handled below: an unknown list, whatever the reason
  }
  if (ports.length === 0 && process.platform === 'linux') ports = sysfs();
  return ports
    .map((port) => ({
      ...port,
      vendorId: port.vendorId?.toLowerCase(),
      productId: port.productId?.toLowerCase(),
      usb: port.vendorId !== undefined,
    }))
    .toSorted(
      (a, b) => Number(b.usb) - Number(a.usb) || a.path.localeCompare(b.path, 'en', { numeric: true }),
    );
}
