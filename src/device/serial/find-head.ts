import type { WantedHead } from '../head/head-link.ts';
import type { LineTransport } from '../transport.ts';
import { listPorts } from './list-ports.ts';
import type { ListOptions } from './list-ports.ts';
import { SerialTransport } from './serial-transport.ts';

/**
 * Ports on which a head that was unplugged may have come back: the one it was on, and every USB port, since the
 * system may give it another name. Which of them it is, its serial number decides (HeadLink asks).
 */
export async function serialCandidates(
  wanted: WantedHead,
  options: ListOptions = {},
): Promise<LineTransport[]> {
  const usb = (await listPorts(options)).filter((port) => port.usb).map((port) => port.path);
  const others = usb.filter((path) => path !== wanted.port);
  return [wanted.port, ...others].map((path) => new SerialTransport(path));
}
