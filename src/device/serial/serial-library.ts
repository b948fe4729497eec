import { DeviceFault } from '../fault.ts';

/** The members of serialport's port that are used here; a test can stand in for them. */
export interface PortHandle {
  readonly isOpen: boolean;
  open(callback: (error: Error | null) => void): void;
  write(data: string, encoding: 'latin1', callback: (error: Error | null | undefined) => void): boolean;
  close(callback: (error: Error | null) => void): void;
  on(event: 'data', listener: (chunk: Buffer) => void): unknown;
  on(event: 'close', listener: (error?: Error) => void): unknown;
  on(event: 'error', listener: (error: Error) => void): unknown;
  removeAllListeners(): unknown;
}

/** A port as the operating system lists it; hexadecimal ids in lower case, without 0x. */
export interface ListedPort {
  readonly path: string;
  readonly manufacturer?: string | undefined;
  readonly serialNumber?: string | undefined;
  readonly vendorId?: string | undefined;
  readonly productId?: string | undefined;
}

export interface SerialLibrary {
  make(path: string, baudRate: number): PortHandle;
  list(): Promise<readonly ListedPort[]>;
}

/**
 * Loads serialport when it is first needed: where its native part cannot load, everything but ports still works.
 * @throws DeviceFault `no-serial-support`
 */
export async function loadSerialLibrary(): Promise<SerialLibrary> {
  try {
    const { SerialPort } = await import('serialport');
    return {
      make: (path, baudRate) => new SerialPort({ path, baudRate, autoOpen: false }),
      list: () => SerialPort.list(),
    };
  } catch (error) {
    const seen = error instanceof Error ? error.message.split('\n')[0] : String(error);
    throw new DeviceFault('no-serial-support', seen ? { seen } : {}, { cause: error });
  }
}
