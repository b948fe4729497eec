import type { Clock } from '../clock.ts';
import { within } from '../clock.ts';
import { DeviceFault } from '../fault.ts';
import { ScpiClient } from '../scpi/client.ts';
import type { WireListener } from '../scpi/query-line.ts';
import type { LineTransport } from '../transport.ts';
import { readDescription, readProtocol, startChecksums } from './handshake.ts';
import { Head } from './head.ts';
import { probe } from './probe.ts';
import { applySettings, readSettings } from './settings.ts';
import type { WantedSettings } from './settings.ts';

export interface ConnectOptions {
  /** Ask the head for checksums. Default `true`; a head without them still connects, with `checksum: false`. */
  readonly checksum?: boolean;
  /** Turn away every head but the one with this serial number. */
  readonly serial?: string;
  /** Settings to begin with; absent: as the head has them. */
  readonly settings?: WantedSettings;
  /** How long to look for a head, ms. Default 3000. */
  readonly probeMs?: number;
  /** Silence after which the head is asked whether it is there, ms. Default 2000. */
  readonly heartbeatMs?: number;
  /** Every line on the wire. */
  readonly wire?: WireListener;
}

/** Where the transport sets no limit of its own. */
const OPEN_MS = 3000;

/**
 * Opens the transport, finds the head behind it and learns what it is. On any fault the transport is closed again.
 * @param transport a fresh one: a transport serves one connection
 * @throws DeviceFault those of opening; `no-answer`, `other-head`, `protocol`, `frame`, and those of the line
 */
export async function connectHead(
  transport: LineTransport,
  clock: Clock,
  options: ConnectOptions = {},
): Promise<Head> {
  const client = new ScpiClient(transport, clock, options.wire);
  try {
    const late = (): Error => new DeviceFault('open-timeout', { port: transport.name });
    await within(clock, transport.openWithinMs ?? OPEN_MS, transport.open(), late);
    const { line } = client;
    const found = await probe(line, options.probeMs ?? 3000);
    if (options.serial !== undefined && found.serial !== options.serial) {
      const seen = `${found.model} ${found.serial}`;
      throw new DeviceFault('other-head', { port: transport.name, seen, allowed: options.serial });
    }
    await line.send('*CLS');
    const protocol = await readProtocol(client);
    const checksum = options.checksum === false ? false : await startChecksums(client, line);
    const description = await readDescription(client);
    const settings = options.settings
      ? await applySettings(client, options.settings, description.limits)
      : await readSettings(client);
    const identity = { ...found, protocol };
    const heartbeatMs = options.heartbeatMs ?? 2000;
    return new Head({ client, identity, description, settings, checksum, heartbeatMs });
  } catch (error) {
    await client.close();
    throw error;
  }
}
