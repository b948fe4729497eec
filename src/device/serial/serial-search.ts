import type { WantedHead } from '../head/head-link.ts';
import type { LineTransport } from '../transport.ts';
import { listPorts } from './list-ports.ts';
import type { ListOptions } from './list-ports.ts';
import type { ListedPort } from './serial-library.ts';
import { SerialTransport } from './serial-transport.ts';

/** What HeadLink looks with. */
export type FindHead = (wanted: WantedHead) => Promise<readonly LineTransport[]>;

/**
 * Prepares the search for a head that may be unplugged later: remembers what kind of USB device sits at `path` now.
 * The search then tries that path, and every port with the same kind of device on it, since the system may give it
 * another name. Other devices are left alone: opening a port resets many boards. Which of the candidates is the head,
 * its serial number decides (HeadLink asks).
 */
export async function serialSearch(
  path: string,
  options: ListOptions & { readonly baudRate?: number } = {},
): Promise<FindHead> {
  const origin = (await listPorts(options)).find((port) => port.path === path);
  return async (wanted) => {
    const alike = (await listPorts(options)).filter((port) => origin && sameDevice(port, origin));
    const paths = new Set([wanted.port, path, ...alike.map((port) => port.path)]);
    // A busy one is not waited for: the next search comes soon.
    const { baudRate } = options;
    return [...paths].map(
      (each) => new SerialTransport(each, { busyMs: 0, ...(baudRate ? { baudRate } : {}) }),
    );
  };
}

/** The same maker's and product's number, and the same USB serial number where both have one. */
function sameDevice(port: ListedPort, origin: ListedPort): boolean {
  if (origin.vendorId === undefined) return false;
  const serials = [port.serialNumber, origin.serialNumber];
  const otherSerial = serials.every((serial) => serial !== undefined) && serials[0] !== serials[1];
  return port.vendorId === origin.vendorId && port.productId === origin.productId && !otherSerial;
}
