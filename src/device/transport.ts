import type { DeviceFault } from './fault.ts';

/**
 * Lines to and from one instrument. The driver knows nothing else: serial port, WebSerial and practice instrument
 * stand behind the same few members. One transport is one connection: after `close` or `onDown` it is never reopened,
 * so that no half line of an old connection is glued to a new one.
 */
export interface LineTransport {
  /** What a person calls it: `/dev/ttyACM0`, `COM5`, `practice instrument`. */
  readonly name: string;
  readonly isOpen: boolean;
  /** @throws DeviceFault `missing`, `permission`, `busy`, `busy-or-denied`, `not-a-serial-port`, `open-timeout`... */
  open(): Promise<void>;
  /** Sends one program message; the transport adds the LF. Throws `disconnected` when not open. */
  write(line: string): Promise<void>;
  /** Forgets the part of a line received so far. */
  discardPartial(): void;
  /** Idempotent; resolves even when the port hangs. Does not call `onDown`. */
  close(): Promise<void>;
  /** Called with each complete line (latin1, no terminator, never empty). */
  onLine: ((line: string) => void) | undefined;
  /** Called once when the connection is lost without `close`. */
  onDown: ((fault: DeviceFault) => void) | undefined;
  /** Called once for each run of bytes longer than a line may be. */
  onOverlong: (() => void) | undefined;
  /** How long `open` may take, ms; 3000 where it is left out. */
  readonly openWithinMs?: number;
  /** Called when `open` waits for something, such as a port that another program holds; `close` ends the wait. */
  onWaiting?: ((fault: DeviceFault) => void) | undefined;
}

/** Bytes to and from one instrument, for transports that have no lines of their own (WebSerial, practice). */
export interface ByteLink {
  readonly name: string;
  readonly isOpen: boolean;
  open(): Promise<void>;
  write(bytes: Uint8Array): Promise<void>;
  close(): Promise<void>;
  onBytes: ((bytes: Uint8Array) => void) | undefined;
  onDown: ((fault: DeviceFault) => void) | undefined;
}
