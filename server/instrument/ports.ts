import { listPorts } from '../../src/device/serial/list-ports.ts';
import type { z } from 'zod';
import type { portSchema } from '../api/instrument.ts';

/** The ports a head may be on, in words; the list may be empty where the system does not tell. */
export async function listedPorts(): Promise<{ ports: z.infer<typeof portSchema>[]; sentence: string }> {
  const ports = await listPorts();
  return {
    ports: ports.map((port) => ({
      path: port.path,
      label: port.manufacturer ?? (port.usb ? 'something on USB' : 'unknown'),
      vendorId: port.vendorId ?? null,
      productId: port.productId ?? null,
      serialNumber: port.serialNumber ?? null,
    })),
    sentence:
      ports.length === 0
        ? 'No port was found: plug the head in, or type its path, such as /dev/ttyACM0 or COM3.'
        : `${ports.length} ${ports.length === 1 ? 'port' : 'ports'} found; choose the one the head is on.`,
  };
}
