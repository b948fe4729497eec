import { Command, InvalidArgumentError } from 'commander';

export interface ServeOptions {
  readonly port: number;
  readonly data?: string | undefined;
  readonly host: string;
  readonly log: 'silent' | 'error' | 'warn' | 'info' | 'debug';
  readonly dev?: boolean | undefined;
  readonly pair?: boolean | undefined;
  readonly pairHost?: string | undefined;
}

export const DEFAULT_PORT = 4747;
const LOOPBACK = new Set(['127.0.0.1', 'localhost', '::1']);

/** The options of serving, shared by `npm start` and the command line. */
export function withServeOptions(command: Command): Command {
  return command
    .option('-p, --port <number>', 'port to listen on; 0 takes any free one', portNumber, DEFAULT_PORT)
    .option('-d, --data <folder>', 'folder of the store (default: the data folder of this user)')
    .option('--host <address>', 'address to listen on; loopback only', '127.0.0.1')
    .option('--pair', 'let phones on your own network in, each paired with a one-time code')
    .option('--pair-host <address>', 'address of this computer for phones (default: its first private IPv4)')
    .option('--log <level>', 'silent, error, warn, info or debug', 'warn');
}

export function parseServeOptions(args: readonly string[]): ServeOptions {
  const command = withServeOptions(new Command('serve')).option('--dev', 'pages straight from their sources');
  command.parse([...args], { from: 'user' });
  return command.opts<ServeOptions>();
}

function portNumber(text: string): number {
  const port = Number(text);
  if (!Number.isInteger(port) || port < 0 || port > 65_535) {
    throw new InvalidArgumentError('A port is a whole number from 0 to 65535.');
  }
  return port;
}

/** Where serving says what it has to say. */
export interface Say {
  readonly out: (sentence: string) => void;
  readonly err: (sentence: string) => void;
}

const toTerminal: Say = {
  out: (sentence) => void process.stdout.write(`${sentence}\n`),
  err: (sentence) => void process.stderr.write(`${sentence}\n`),
};

/** Serves until it is stopped. Resolves with an exit code when it cannot start. */
export async function serve(options: ServeOptions, say: Say = toTerminal): Promise<number> {
  if (!LOOPBACK.has(options.host)) {
    say.err(
      `The bench listens on this computer alone, and ${options.host} is not it; leave --host out or say 127.0.0.1.`,
    );
    return 2;
  }
  const pair = await pairHost(options);
  if ('refusal' in pair) {
    say.err(pair.refusal);
    return 2;
  }
  // The server is read only when it is wanted: the command line has verbs that need none of it.
  const [{ storeFile }, { start }, { pino }] = await Promise.all([
    import('./data-folder.ts'),
    import('./start.ts'),
    import('pino'),
  ]);
  try {
    const started = await start({
      storeFile: storeFile(options.data),
      port: options.port,
      host: options.host === 'localhost' ? '127.0.0.1' : options.host,
      logger: pino({ level: options.log }, pino.destination(2)),
      ...(pair.address ? { pair: { host: pair.address } } : {}),
      ...(options.dev ? { pages: (await import('./development-pages.ts')).developmentPages } : {}),
    });
    say.out(`Tintladder is at ${started.address}`);
    if (started.phoneAddress) {
      say.out(
        `Phones pair at ${started.phoneAddress}/pair with the code shown on the computer's page, under "This screen".`,
      );
      say.out(
        'There is no https on that address: others on the same network could listen. Use it on your own network.',
      );
    }
    say.out(`The store is ${started.bench.db.name}; stop with Ctrl+C.`);
    await new Promise<void>((resolve) => {
      const stop = (): void => resolve();
      process.once('SIGINT', stop);
      process.once('SIGTERM', stop);
    });
    await started.close();
    return 0;
  } catch (error) {
    say.err(startSentence(error, options));
    return 1;
  }
}

/** The address for phones, none when pairing was not asked for, or why it cannot be. */
async function pairHost(options: ServeOptions): Promise<{ address: string } | { refusal: string }> {
  if (!options.pair) {
    return options.pairHost === undefined
      ? { address: '' }
      : { refusal: '--pair-host says where to pair, and pairing is off; add --pair.' };
  }
  if (options.dev) return { refusal: '--pair serves the built pages to phones; leave --dev out.' };
  const [{ lanAddress }, { networkInterfaces }] = await Promise.all([
    import('./pairing/lan-address.ts'),
    import('node:os'),
  ]);
  return lanAddress(options.pairHost, networkInterfaces());
}

function startSentence(error: unknown, options: ServeOptions): string {
  if (error instanceof Error && error.name === 'StoreProblem') return error.message;
  const code = (error as { code?: unknown }).code;
  if (code === 'EADDRINUSE') {
    return `Port ${options.port} is taken, perhaps by a bench that already runs; open http://127.0.0.1:${options.port} or choose another with --port.`;
  }
  if (code === 'EADDRNOTAVAIL') {
    return `${options.pairHost ?? options.host} is no address of this computer; choose one of its own.`;
  }
  if (code === 'EACCES')
    return `Port ${options.port} may not be used by this user; choose one above 1023 with --port.`;
  return `The bench could not start: ${(error as Error).message}`;
}
