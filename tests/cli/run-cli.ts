import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { main } from '../../cli/main.ts';

const BIN = fileURLToPath(new URL('../../cli/bin.mjs', import.meta.url));
export const FIXTURES = fileURLToPath(new URL('../fixtures/paint/', import.meta.url));

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** A command line in this process: the same program without the time a process takes to start. */
export async function cli(...args: string[]): Promise<Ran> {
  const said = { out: '', err: '' };
  const code = await main(args, {
    out: (text) => (said.out += text.endsWith('\n') ? text : `${text}\n`),
    err: (text) => (said.err += text.endsWith('\n') ? text : `${text}\n`),
  });
  return { code, ...said };
}

/** The program as a shell runs it. */
export function spawned(...args: string[]): Ran {
  const ran = spawnSync(process.execPath, [BIN, ...args], { encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 });
  return { code: ran.status, out: ran.stdout, err: ran.stderr };
}
