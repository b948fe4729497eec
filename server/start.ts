import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import type { Express } from 'express';
import { pino, type Logger } from 'pino';
import { serialSearch } from '../src/device/serial/serial-search.ts';
import { systemClock } from '../src/device/serial/system-clock.ts';
import { SerialTransport } from '../src/device/serial/serial-transport.ts';
import { createApp } from './app.ts';
import type { Bench } from './bench.ts';
import { CheckResults } from './checking/check-results.ts';
import { Events } from './events.ts';
import { FitRunner } from './fitting/fit-runner.ts';
import type { Ports } from './instrument/bench-reading.ts';
import { BrowserPorts } from './instrument/browser-ports.ts';
import type { CheckTileStore } from './instrument/check-tile.ts';
import { WhiteBlocks } from './instrument/white-blocks.ts';
import { LiveInstrument } from './instrument/live-instrument.ts';
import { Pairing } from './pairing/pairing.ts';
import { MixRunner } from './mixing/mix-runner.ts';
import { addCalibration, calibrationsOf } from './store/calibrations.ts';
import { closeAbandonedFits } from './store/fits.ts';
import { ByButton } from './reading/by-button.ts';
import { openStore } from './store/open-store.ts';

export interface StartOptions {
  /** Path of the store; made if it is not there. */
  readonly storeFile: string;
  /** 0 takes any free port. */
  readonly port: number;
  readonly host?: string;
  readonly logger?: Logger;
  readonly webFolder?: string;
  readonly checkAnswers?: boolean;
  /** Absent: the serial ports of this computer. */
  readonly ports?: Ports;
  /** Lets phones in at this address once they are paired; absent, the bench is on this computer alone. */
  readonly pair?: PairOptions;
  /** Development: pages straight from their sources. */
  readonly pages?: (app: Express, server: Server) => void;
}

export interface PairOptions {
  /** An IP address of this computer in a private network. */
  readonly host: string;
  /** Milliseconds since 1970; the computer's clock unless said. */
  readonly now?: () => number;
}

export interface Started {
  /** Where paired phones reach the bench; empty when they cannot. */
  readonly phoneAddress: string;
  readonly address: string;
  readonly bench: Bench;
  readonly close: () => Promise<void>;
}

export const WEB_DIST = fileURLToPath(new URL('../web/dist', import.meta.url));

const SERIAL_PORTS: Ports = {
  openPort: (path, baudRate) => Promise.resolve(new SerialTransport(path, { baudRate })),
  searchPort: (path, baudRate) => serialSearch(path, { baudRate }),
};

/**
 * Opens the store and listens. Loopback only, by number.
 * @throws StoreProblem; Error with `code` EADDRINUSE when the port is taken
 */
export async function start(options: StartOptions): Promise<Started> {
  const logger = options.logger ?? pino({ level: 'warn' });
  const now = (): string => new Date().toISOString();
  const db = openStore(options.storeFile);
  closeAbandonedFits(db, now());
  const events = new Events();
  const blocks = new WhiteBlocks(db, now);
  const tiles: CheckTileStore = {
    sessions: (name) =>
      calibrationsOf(db, name, 'check tile').map(({ at, body }) => ({
        at,
        reflectance: JSON.parse(body) as number[],
      })),
    add: (name, reflectance) => addCalibration(db, name, 'check tile', reflectance, now()),
  };
  const browserPorts = new BrowserPorts((event) => events.send(event));
  const instrument = new LiveInstrument({
    db,
    browserPorts,
    clock: systemClock,
    now,
    ...(options.ports ?? SERIAL_PORTS),
    tiles,
    blocks,
    judged: () => {
      for (const what of ['tubes', 'checks'] as const) events.send({ type: 'changed', what });
    },
    changed: (view) => events.send({ type: 'instrument', instrument: view }),
    read: (reading) => events.send({ type: 'reading', reading }),
  });
  const mixing = new MixRunner();
  const bench: Bench = {
    db,
    now,
    events,
    instrument,
    tiles,
    browserPorts,
    button: new ByButton({ db, now, events, instrument }),
    fits: new FitRunner((error) => logger.error({ err: error }, 'fit')),
    mixing,
    checking: new CheckResults(mixing),
    startedAt: now(),
    webFolder: options.webFolder ?? WEB_DIST,
  };
  const server = createServer();
  const { pages } = options;
  const pairing =
    options.pair &&
    new Pairing(db, options.pair.now ?? Date.now, () => events.send({ type: 'changed', what: 'pairing' }));
  const app = createApp(bench, {
    others: new Set(),
    logger,
    pairing,
    checkAnswers: options.checkAnswers ?? false,
    ...(pages ? { development: true, pages: (made: Express) => pages(made, server) } : {}),
  });
  server.on('request', app);
  let phones: Server | undefined;
  try {
    await listen(server, options.port, options.host ?? '127.0.0.1');
    if (options.pair && pairing) {
      const { host } = options.pair;
      phones = createServer();
      const own = { others: new Set([bracketed(host)]), othersAlone: true, fromNetwork: true };
      phones.on(
        'request',
        createApp(bench, { ...own, logger, pairing, checkAnswers: options.checkAnswers ?? false }),
      );
      await listen(phones, options.port, host);
      pairing.address = addressOf(phones);
    }
  } catch (error) {
    server.close();
    db.close();
    throw error;
  }
  const alive = setInterval(() => events.keepAlive(), 25_000);
  alive.unref();
  const close = async (): Promise<void> => {
    clearInterval(alive);
    bench.fits.stopAll();
    bench.mixing.stop();
    events.close();
    await instrument.disconnect().catch(() => undefined);
    await Promise.all([closed(server), phones && closed(phones)]);
    db.close();
  };
  return { address: addressOf(server), phoneAddress: pairing?.address ?? '', bench, close };
}

const bracketed = (address: string): string =>
  address.includes(':') ? `[${address.toLowerCase()}]` : address;

function addressOf(server: Server): string {
  const { port, address } = server.address() as AddressInfo;
  return `http://${bracketed(address)}:${port}`;
}

function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}

function listen(server: Server, port: number, host: string): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      server.off('error', reject);
      resolve();
    });
  });
}
