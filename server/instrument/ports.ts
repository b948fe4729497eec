import { listPorts } from '../../src/device/serial/list-ports.ts';
import type { z } from 'zod';
import type { portSchema } from '../api/instrument.ts';
import { say } from '../api/sentences/instrument.ts';

/** The ports a head may be on, in words; the list may be empty where the system does not tell. */
export async function listedPorts(): Promise<{ ports: z.infer<typeof portSchema>[]; sentence: string }> {
  const ports = await listPorts();
  return {
    ports: ports.map((port) => ({
      path: port.path,
      label: port.manufacturer ?? (port.usb ? say('something-on-usb') : 'unknown'),
      vendorId: port.vendorId ?? null,
      productId: port.productId ?? null,
      serialNumber: port.serialNumber ?? null,
    })),
    sentence:
      ports.length === 0
        ? say('no-port')
        : say('ports-found', { count: ports.length, ports: ports.length === 1 ? 'port' : 'ports' }),
  };
}
