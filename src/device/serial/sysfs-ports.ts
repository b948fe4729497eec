import { existsSync, readFileSync, readdirSync, realpathSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { ListedPort } from './serial-library.ts';

const HEAD_PORTS = /^(ttyACM|ttyUSB|ttyAMA|rfcomm)\d+$/;
/** Steps from a tty up to the USB device that carries the ids. */
const MOST_STEPS = 4;

/**
 * Linux serial ports read straight from /sys, for systems where udevadm is missing (containers, slim installs), fails
 * or hangs.
 */
export function listFromSysfs(root = '/sys/class/tty', dev = '/dev'): ListedPort[] {
  const names = existsSync(root) ? readdirSync(root) : [];
  return names
    .filter((name) => HEAD_PORTS.test(name))
    .toSorted()
    .flatMap((name) => {
      let device: string;
      try {
        device = realpathSync(join(root, name, 'device'));
      } catch {
        return [];
      }
      for (
        let step = 0;
        step < MOST_STEPS && device !== '/' && !existsSync(join(device, 'idVendor'));
        step++
      ) {
        device = dirname(device);
      }
      return [
        {
          path: `${dev}/${name}`,
          vendorId: text(join(device, 'idVendor')),
          productId: text(join(device, 'idProduct')),
          serialNumber: text(join(device, 'serial')),
          manufacturer: text(join(device, 'manufacturer')),
        },
      ];
    });
}

function text(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8').trim() || undefined;
  } catch {
    return undefined;
  }
}
